import type { FanApex } from "./types.ts";

/** Edges nearer than this, mm, meet; a tangent nearer than this, rad, to the ruling fixes no plane. */
const EDGES_MEET_MM = 1e-7;
const ALONG_RULING_RAD = 1e-7;

/** The foam whose bend counts; none with a least radius of 0. */
export interface BendLimits {
  readonly thicknessMm: number;
  readonly leastRadiusMm: number;
  readonly fanBend?: "swept edge" | "near apex";
  /** With aim "strain": how far apart the edges are, mm; strain counts as the twist that would cost it over that. */
  readonly strainSpanMm?: number;
}

/** Ends of rulings as `evaluateEdge` writes them, and where in them: EDGE_NUMBERS numbers from an offset. */
export interface RulingEnds {
  readonly first: Float64Array;
  readonly firstOffset: number;
  readonly second: Float64Array;
  readonly secondOffset: number;
}

/**
 * The twist of a ruling, rad, signed: the turn from the plane of the first tangent to that of the second, right-handed
 * about the ruling. None where edges meet or a tangent runs along the ruling.
 */
export function twistOf(a: Float64Array, i: number, b: Float64Array, j: number): number {
  const rx = n(b, j) - n(a, i);
  const ry = n(b, j + 1) - n(a, i + 1);
  const rz = n(b, j + 2) - n(a, i + 2);
  const length = Math.sqrt(rx * rx + ry * ry + rz * rz);
  if (length < EDGES_MEET_MM) return 0;
  const ax = n(a, i + 4) * rz - n(a, i + 5) * ry;
  const ay = n(a, i + 5) * rx - n(a, i + 3) * rz;
  const az = n(a, i + 3) * ry - n(a, i + 4) * rx;
  const bx = n(b, j + 4) * rz - n(b, j + 5) * ry;
  const by = n(b, j + 5) * rx - n(b, j + 3) * rz;
  const bz = n(b, j + 3) * ry - n(b, j + 4) * rx;
  const least = ALONG_RULING_RAD * ALONG_RULING_RAD * length * length;
  if (ax * ax + ay * ay + az * az < least || bx * bx + by * by + bz * bz < least) return 0;
  const turn = (ay * bz - az * by) * rx + (az * bx - ax * bz) * ry + (ax * by - ay * bx) * rz;
  return Math.atan2(turn / length, ax * bx + ay * by + az * bz);
}

/**
 * How much tighter than the foam's limit a ruling bends, as thickness over radius; 0 within the limit. The bend is that
 * of the tighter end as each edge shows it; in a fan that of the swept edge, or carried from there to one thickness from
 * the apex. Never over one thickness in radius.
 */
export function bendOf(
  ends: RulingEnds,
  twistRad: number,
  fan: FanApex,
  { thicknessMm, leastRadiusMm, fanBend }: BendLimits,
): number {
  if (leastRadiusMm <= thicknessMm) return 0;
  const tight = tightestBend(ends, twistRad, fan, fanBend === "near apex" ? thicknessMm : undefined);
  return Math.max(0, Math.min(1, tight * thicknessMm) - thicknessMm / leastRadiusMm);
}

/** The bend at the tighter end of a ruling, 1/mm; in a fan at the swept edge, or carried to one thickness from its apex. */
function tightestBend(
  ends: RulingEnds,
  twistRad: number,
  fan: FanApex,
  fromApexMm: number | undefined,
): number {
  const { first, firstOffset, second, secondOffset } = ends;
  const rx = n(second, secondOffset) - n(first, firstOffset);
  const ry = n(second, secondOffset + 1) - n(first, firstOffset + 1);
  const rz = n(second, secondOffset + 2) - n(first, firstOffset + 2);
  const length = Math.sqrt(rx * rx + ry * ry + rz * rz);
  if (length < EDGES_MEET_MM) return 0;
  const rate = twistRad / length;
  let bend = 0;
  if (fan !== "first") bend = curvatureAt(first, firstOffset, rx / length, ry / length, rz / length, rate);
  if (fan !== "second")
    bend = Math.max(bend, curvatureAt(second, secondOffset, rx / length, ry / length, rz / length, rate));
  return fan === "none" || fromApexMm === undefined ? bend : bend * Math.max(1, length / fromApexMm);
}

/**
 * The strain of pressing foam onto the sheet at a ruling (see `pressStrain`), as the twist over the span that would cost
 * as much bending: 2 strain span / thickness, rad.
 */
function strainAsTwist(ends: RulingEnds, twistRad: number, fan: FanApex, limits: BendLimits): number {
  const { first, firstOffset: i, second, secondOffset: j } = ends;
  const length = Math.hypot(
    n(second, j) - n(first, i),
    n(second, j + 1) - n(first, i + 1),
    n(second, j + 2) - n(first, i + 2),
  );
  if (length < EDGES_MEET_MM) return 0;
  const { thicknessMm, strainSpanMm = 0 } = limits;
  const half = Math.min(tightestBend(ends, twistRad, fan, thicknessMm), 1 / thicknessMm) / 2;
  const rate = twistRad / length;
  const membrane = (twistRad * twistRad) / 12;
  const bending = (thicknessMm / 2) * (half + Math.sqrt(half * half + rate * rate));
  return (2 * (membrane + bending) * strainSpanMm) / thicknessMm;
}

/** Size of the normal curvature square to the ruling at one end (see `rulingOf`). */
function curvatureAt(e: Float64Array, o: number, rx: number, ry: number, rz: number, rate: number): number {
  const tx = n(e, o + 3);
  const ty = n(e, o + 4);
  const tz = n(e, o + 5);
  const mx = ty * rz - tz * ry;
  const my = tz * rx - tx * rz;
  const mz = tx * ry - ty * rx;
  const sine = Math.sqrt(mx * mx + my * my + mz * mz);
  if (sine < ALONG_RULING_RAD) return 0;
  const own = (n(e, o + 6) * mx + n(e, o + 7) * my + n(e, o + 8) * mz) / sine;
  const cosine = tx * rx + ty * ry + tz * rz;
  return Math.abs(own + 2 * rate * cosine * sine) / (sine * sine);
}

/** Twist and bend squared and added, or the square of the strain: what a ruling costs by swept length. */
export function rulingCost(ends: RulingEnds, limits: BendLimits): number {
  const twist = twistOf(ends.first, ends.firstOffset, ends.second, ends.secondOffset);
  if (limits.strainSpanMm !== undefined) return strainAsTwist(ends, twist, "none", limits) ** 2;
  const bend = bendOf(ends, twist, "none", limits);
  return twist * twist + bend * bend;
}

/** What a ruling of a fan costs: it sweeps one tangent only and has no twist. */
export function fanCost(ends: RulingEnds, fan: FanApex, limits: BendLimits): number {
  if (limits.strainSpanMm !== undefined) return strainAsTwist(ends, 0, fan, limits) ** 2;
  const bend = bendOf(ends, 0, fan, limits);
  return bend * bend;
}

/** The number at a place that is known to be inside. */
const n = (numbers: Float64Array, index: number): number => numbers[index] ?? 0;
