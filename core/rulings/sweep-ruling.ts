import { at } from "../foundation/index.ts";
import { type CornerSide, EDGE_NUMBERS, evaluateEdge } from "./evaluate-edge.ts";
import { pairingAt } from "./pairing-at.ts";
import type { PairedEdges } from "./types.ts";

/**
 * Where `sweepRuling` writes what: a ruling and how it moves as s grows. Points and vectors take three places. Velocities
 * are by s; normals are unit and inward; where a tangent runs along the ruling, or turns in a fan, the normal is that of
 * the other end.
 */
export const SWEEP = {
  firstMm: 0,
  secondMm: 1,
  lengthMm: 2,
  twistRad: 3,
  firstCurvature: 4,
  secondCurvature: 5,
  from: 6,
  to: 9,
  fromVelocity: 12,
  toVelocity: 15,
  direction: 18,
  normal: 21,
  normalVelocity: 24,
  firstNormal: 27,
  secondNormal: 30,
} as const;
export const SWEEP_NUMBERS = 33;

/** A tangent nearer than this to its ruling, rad, fixes no plane. */
const ALONG_RULING_RAD = 1e-7;
/** Edges nearer than this meet: the ruling there has the direction that its neighbours tend to. */
const EDGES_MEET_MM = 1e-7;

/** Room that `sweepRuling` works in: both edges, the turn of the direction, the changes of both normals. */
const SECOND_EDGE = EDGE_NUMBERS;
const TURN = 2 * EDGE_NUMBERS;
const FIRST_CHANGE = TURN + 3;
const SECOND_CHANGE = TURN + 6;
export const sweepRoom = (): Float64Array => new Float64Array(TURN + 9);

/**
 * Writes the ruling at s, inside the interval named, and its motion into `out` from `o` on. The inmost step of every
 * quadrature on a sheet, so it makes no objects. The normal is the middle of those at both ends; the bend at each end
 * comes from the edge's own: with e = normal × direction, c and d the parts of the tangent along the ruling and e, and τ
 * the rate of twist, the edge's normal curvature is κ d² + 2 τ c d (Euler; along a ruling there is none).
 */
export function sweepRuling(
  paired: PairedEdges,
  sMm: number,
  interval: number,
  { out, o, room }: { readonly out: Float64Array; readonly o: number; readonly room: Float64Array },
): void {
  const from = at(paired.rulings, interval);
  const side: CornerSide = 2 * sMm < from.sMm + at(paired.rulings, interval + 1).sMm ? "after" : "before";
  const { firstMm, secondMm, firstRate } = pairingAt(paired, interval, sMm);
  evaluateEdge(paired.first, firstMm, side, room, 0);
  evaluateEdge(paired.second, secondMm, side, room, SECOND_EDGE);
  out[o + SWEEP.firstMm] = firstMm;
  out[o + SWEEP.secondMm] = secondMm;
  writeEnds(room, firstRate, out, o);
  const lengthMm = writeDirection(room, side, out, o);
  const hasFirst =
    from.fanAfter !== "first" &&
    writeNormal(
      room,
      0,
      firstRate,
      paired.side,
      out,
      o + SWEEP.direction,
      o + SWEEP.firstNormal,
      FIRST_CHANGE,
    );
  const hasSecond =
    from.fanAfter !== "second" &&
    writeNormal(
      room,
      SECOND_EDGE,
      2 - firstRate,
      paired.side,
      out,
      o + SWEEP.direction,
      o + SWEEP.secondNormal,
      SECOND_CHANGE,
    );
  if (!hasFirst && !hasSecond) writeAnyNormal(room, out, o);
  else if (!hasFirst)
    copyNormal(room, out, o + SWEEP.secondNormal, o + SWEEP.firstNormal, SECOND_CHANGE, FIRST_CHANGE);
  else if (!hasSecond)
    copyNormal(room, out, o + SWEEP.firstNormal, o + SWEEP.secondNormal, FIRST_CHANGE, SECOND_CHANGE);
  writeMiddleNormal(room, out, o);
  const twist = writeTwist(out, o);
  const rate = lengthMm > EDGES_MEET_MM ? twist / lengthMm : 0;
  const atFirst = bendAt(room, 0, out, o + SWEEP.firstNormal, o + SWEEP.direction, rate);
  const atSecond = bendAt(room, SECOND_EDGE, out, o + SWEEP.secondNormal, o + SWEEP.direction, rate);
  out[o + SWEEP.firstCurvature] = from.fanAfter === "first" ? atSecond : atFirst;
  out[o + SWEEP.secondCurvature] = from.fanAfter === "second" ? atFirst : atSecond;
}

const n = (list: Float64Array, index: number): number => list[index] ?? 0;

function writeEnds(room: Float64Array, firstRate: number, out: Float64Array, o: number): void {
  for (let axis = 0; axis < 3; axis++) {
    out[o + SWEEP.from + axis] = n(room, axis);
    out[o + SWEEP.to + axis] = n(room, SECOND_EDGE + axis);
    out[o + SWEEP.fromVelocity + axis] = firstRate * n(room, 3 + axis);
    out[o + SWEEP.toVelocity + axis] = (2 - firstRate) * n(room, SECOND_EDGE + 3 + axis);
  }
}

/**
 * The direction from first to second end, and its change into the room. Of a ruling of no length it is the limit: edges
 * that part open along the difference of their velocities, edges that close against it.
 */
function writeDirection(room: Float64Array, side: CornerSide, out: Float64Array, o: number): number {
  const x = n(out, o + SWEEP.to) - n(out, o + SWEEP.from);
  const y = n(out, o + SWEEP.to + 1) - n(out, o + SWEEP.from + 1);
  const z = n(out, o + SWEEP.to + 2) - n(out, o + SWEEP.from + 2);
  const vx = n(out, o + SWEEP.toVelocity) - n(out, o + SWEEP.fromVelocity);
  const vy = n(out, o + SWEEP.toVelocity + 1) - n(out, o + SWEEP.fromVelocity + 1);
  const vz = n(out, o + SWEEP.toVelocity + 2) - n(out, o + SWEEP.fromVelocity + 2);
  const lengthMm = Math.sqrt(x * x + y * y + z * z);
  out[o + SWEEP.lengthMm] = lengthMm;
  const isRuling = lengthMm > EDGES_MEET_MM;
  const opening = Math.sqrt(vx * vx + vy * vy + vz * vz);
  const scale = isRuling ? 1 / lengthMm : opening === 0 ? 0 : (side === "after" ? 1 : -1) / opening;
  const dx = isRuling ? x * scale : vx * scale;
  const dy = isRuling ? y * scale : opening === 0 ? 1 : vy * scale;
  const dz = isRuling ? z * scale : vz * scale;
  out[o + SWEEP.direction] = dx;
  out[o + SWEEP.direction + 1] = dy;
  out[o + SWEEP.direction + 2] = dz;
  const along = vx * dx + vy * dy + vz * dz;
  const turn = isRuling ? 1 / lengthMm : 0;
  room[TURN] = (vx - along * dx) * turn;
  room[TURN + 1] = (vy - along * dy) * turn;
  room[TURN + 2] = (vz - along * dz) * turn;
  return lengthMm;
}

/** The normal of the plane of tangent and ruling at one end, and its change by s; false where there is no such plane. */
function writeNormal(
  room: Float64Array,
  edge: number,
  rate: number,
  side: number,
  out: Float64Array,
  direction: number,
  normal: number,
  change: number,
): boolean {
  const [rx, ry, rz] = [n(out, direction), n(out, direction + 1), n(out, direction + 2)];
  const [tx, ty, tz] = [n(room, edge + 3), n(room, edge + 4), n(room, edge + 5)];
  const mx = side * (ty * rz - tz * ry);
  const my = side * (tz * rx - tx * rz);
  const mz = side * (tx * ry - ty * rx);
  const sine = Math.sqrt(mx * mx + my * my + mz * mz);
  if (sine < ALONG_RULING_RAD) return false;
  const [nx, ny, nz] = [mx / sine, my / sine, mz / sine];
  const [kx, ky, kz] = [rate * n(room, edge + 6), rate * n(room, edge + 7), rate * n(room, edge + 8)];
  const [ux, uy, uz] = [n(room, TURN), n(room, TURN + 1), n(room, TURN + 2)];
  const cx = side * (ky * rz - kz * ry + ty * uz - tz * uy);
  const cy = side * (kz * rx - kx * rz + tz * ux - tx * uz);
  const cz = side * (kx * ry - ky * rx + tx * uy - ty * ux);
  const along = cx * nx + cy * ny + cz * nz;
  out[normal] = nx;
  out[normal + 1] = ny;
  out[normal + 2] = nz;
  room[change] = (cx - along * nx) / sine;
  room[change + 1] = (cy - along * ny) / sine;
  room[change + 2] = (cz - along * nz) / sine;
  return true;
}

function copyNormal(
  room: Float64Array,
  out: Float64Array,
  from: number,
  to: number,
  changeFrom: number,
  changeTo: number,
): void {
  for (let axis = 0; axis < 3; axis++) {
    out[to + axis] = n(out, from + axis);
    room[changeTo + axis] = n(room, changeFrom + axis);
  }
}

/** Where both edges run along the ruling the sheet has no plane: the most upward one serves. */
function writeAnyNormal(room: Float64Array, out: Float64Array, o: number): void {
  const d = o + SWEEP.direction;
  const isSteep = Math.abs(n(out, d + 2)) > 0.9;
  const along = isSteep ? n(out, d) : n(out, d + 2);
  const size = Math.sqrt(1 - along * along);
  for (let axis = 0; axis < 3; axis++) {
    const up = axis === (isSteep ? 0 : 2) ? 1 : 0;
    const value = (up - along * n(out, d + axis)) / size;
    out[o + SWEEP.firstNormal + axis] = value;
    out[o + SWEEP.secondNormal + axis] = value;
    room[FIRST_CHANGE + axis] = 0;
    room[SECOND_CHANGE + axis] = 0;
  }
}

/** The middle of the normals at both ends, unit, and its change. */
function writeMiddleNormal(room: Float64Array, out: Float64Array, o: number): void {
  const [a, b] = [o + SWEEP.firstNormal, o + SWEEP.secondNormal];
  let x = n(out, a) + n(out, b);
  let y = n(out, a + 1) + n(out, b + 1);
  let z = n(out, a + 2) + n(out, b + 2);
  const size = Math.sqrt(x * x + y * y + z * z);
  // Planes turned over between the ends have no middle: the first one serves.
  const scale = size < ALONG_RULING_RAD ? 0 : 1 / size;
  x = scale === 0 ? n(out, a) : x * scale;
  y = scale === 0 ? n(out, a + 1) : y * scale;
  z = scale === 0 ? n(out, a + 2) : z * scale;
  const cx = n(room, FIRST_CHANGE) + n(room, SECOND_CHANGE);
  const cy = n(room, FIRST_CHANGE + 1) + n(room, SECOND_CHANGE + 1);
  const cz = n(room, FIRST_CHANGE + 2) + n(room, SECOND_CHANGE + 2);
  const along = cx * x + cy * y + cz * z;
  out[o + SWEEP.normal] = x;
  out[o + SWEEP.normal + 1] = y;
  out[o + SWEEP.normal + 2] = z;
  out[o + SWEEP.normalVelocity] = (cx - along * x) * scale;
  out[o + SWEEP.normalVelocity + 1] = (cy - along * y) * scale;
  out[o + SWEEP.normalVelocity + 2] = (cz - along * z) * scale;
}

function writeTwist(out: Float64Array, o: number): number {
  const [a, b, d] = [o + SWEEP.firstNormal, o + SWEEP.secondNormal, o + SWEEP.direction];
  const [ax, ay, az] = [n(out, a), n(out, a + 1), n(out, a + 2)];
  const [bx, by, bz] = [n(out, b), n(out, b + 1), n(out, b + 2)];
  const turn =
    (ay * bz - az * by) * n(out, d) +
    (az * bx - ax * bz) * n(out, d + 1) +
    (ax * by - ay * bx) * n(out, d + 2);
  const twist = Math.atan2(turn, ax * bx + ay * by + az * bz);
  out[o + SWEEP.twistRad] = twist;
  return twist;
}

/** The bend square to the ruling at one end, positive toward the normal. */
function bendAt(
  room: Float64Array,
  edge: number,
  out: Float64Array,
  normal: number,
  direction: number,
  rate: number,
): number {
  const [nx, ny, nz] = [n(out, normal), n(out, normal + 1), n(out, normal + 2)];
  const [rx, ry, rz] = [n(out, direction), n(out, direction + 1), n(out, direction + 2)];
  const [tx, ty, tz] = [n(room, edge + 3), n(room, edge + 4), n(room, edge + 5)];
  const along = tx * rx + ty * ry + tz * rz;
  const across = tx * (ny * rz - nz * ry) + ty * (nz * rx - nx * rz) + tz * (nx * ry - ny * rx);
  if (Math.abs(across) < ALONG_RULING_RAD) return 0;
  const own = n(room, edge + 6) * nx + n(room, edge + 7) * ny + n(room, edge + 8) * nz;
  return (own - 2 * rate * along * across) / (across * across);
}
