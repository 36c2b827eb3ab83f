import { at, type FlatPoint } from "../foundation/index.ts";
import { creaseTurn } from "./crease-turn.ts";
import { pointOnRuled } from "./ruling-at.ts";
import { integralPolynomial, STRETCH_POINTS, valueAt } from "./stretch-points.ts";
import { type StripBounds, stripMotion } from "./strip-motion.ts";
import type { Development, RuledPlace, RuledSurface, SweptStretch } from "./types.ts";

/**
 * The flat pattern of a sheet at one depth (its neutral fibre), or of the strip of it between two constant t, seen from
 * the upper face: the middle line starts at (0, 0) with its forward end and its chord runs along +u, whichever edge is
 * first and whichever way they run.
 *
 * In the flat the ruling has the direction θ(s). Its ends move by p along it and q square to it as they do in space, so
 * θ' = (q₂ − q₁) / length, and the first end moves by p, q turned by θ: both edges, all rulings and all angles between
 * them keep their size, also where the sheet is twisted (then the area gives, by the square of the twist). Integrated by
 * five-point Gauss between stops. At a crease the neutral fibre turns by an arc of the crease's angle.
 */
export function developRuled(
  surface: RuledSurface,
  depthMm: number,
  [fromT, toT]: readonly [number, number] = [0, 1],
): Development {
  const bounds = { depthMm, fromT, toT };
  const stretches = layStretches(surface, bounds);
  const raw = (place: RuledPlace) => rawFlat(surface, stretches, bounds, place);
  const turn = placing(surface, depthMm, raw);
  return {
    depthMm,
    flatAt: (place) => turn.place(raw(place)),
    rulingAngleAt: (sMm) => angleAt(stretches, sMm) + turn.angleRad,
  };
}

/** A stretch between two stops, laid flat: the ruling's angle, its first end and its length as polynomials of x in [0, 1]. */
interface FlatStretch {
  readonly fromMm: number;
  readonly toMm: number;
  readonly angleRad: number;
  readonly first: FlatPoint;
  readonly lengthMm: number;
  readonly angles: readonly number[];
  readonly us: readonly number[];
  readonly vs: readonly number[];
  readonly lengths: readonly number[];
}

function layStretches(surface: RuledSurface, bounds: StripBounds): readonly FlatStretch[] {
  let angleRad = 0;
  let first: FlatPoint = { u: 0, v: 0 };
  return surface.stretches.map((swept) => {
    const crease = surface.creases.find(({ sMm }) => sMm === swept.fromMm);
    if (crease !== undefined) first = overCrease(surface, swept, bounds.depthMm, { first, angleRad });
    const stretch = layStretch(swept, bounds, { angleRad, first });
    angleRad += valueAt(stretch.angles, 1);
    first = { u: first.u + valueAt(stretch.us, 1), v: first.v + valueAt(stretch.vs, 1) };
    return stretch;
  });
}

interface FlatStart {
  readonly angleRad: number;
  readonly first: FlatPoint;
}

function layStretch(
  { fromMm, toMm, sweeps }: SweptStretch,
  bounds: StripBounds,
  start: FlatStart,
): FlatStretch {
  const span = toMm - fromMm;
  const motions = sweeps.map((sweep) => stripMotion(sweep, bounds));
  const angles = integralPolynomial(
    motions.map(({ fromAcross, toAcross, lengthMm }) => (span * (toAcross - fromAcross)) / lengthMm),
  );
  const us: number[] = [];
  const vs: number[] = [];
  motions.forEach(({ fromAlong: p, fromAcross: q }, index) => {
    const angle = start.angleRad + valueAt(angles, at(STRETCH_POINTS, index));
    const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
    us.push(span * (p * cos - q * sin));
    vs.push(span * (p * sin + q * cos));
  });
  const lengths = integralPolynomial(motions.map(({ fromAlong, toAlong }) => span * (toAlong - fromAlong)));
  const middle = 2;
  return {
    ...start,
    fromMm,
    toMm,
    lengthMm: at(motions, middle).lengthMm - valueAt(lengths, at(STRETCH_POINTS, middle)),
    angles,
    us: integralPolynomial(us),
    vs: integralPolynomial(vs),
    lengths,
  };
}

/** Where the first end goes on after a crease: on by the arc of radius depth, outward of the turn, square to the ruling. */
function overCrease(
  surface: RuledSurface,
  { fromMm, interval }: SweptStretch,
  depthMm: number,
  { first, angleRad }: FlatStart,
): FlatPoint {
  // A point on the normal moves by bend × (direction × normal): against the flat's direction square to the ruling.
  const across = -depthMm * creaseTurn(surface, fromMm, interval);
  return { u: first.u - across * Math.sin(angleRad), v: first.v + across * Math.cos(angleRad) };
}

const stretchAt = (stretches: readonly FlatStretch[], sMm: number): FlatStretch => {
  let [low, high] = [0, stretches.length - 1];
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (at(stretches, middle).fromMm <= sMm) low = middle;
    else high = middle - 1;
  }
  return at(stretches, low);
};

const partOf = ({ fromMm, toMm }: FlatStretch, sMm: number): number =>
  Math.min(1, Math.max(0, (sMm - fromMm) / (toMm - fromMm)));

function angleAt(stretches: readonly FlatStretch[], sMm: number): number {
  const stretch = stretchAt(stretches, sMm);
  return stretch.angleRad + valueAt(stretch.angles, partOf(stretch, sMm));
}

function rawFlat(
  { side, lengthSMm }: RuledSurface,
  stretches: readonly FlatStretch[],
  { fromT, toT }: StripBounds,
  { sMm, t }: RuledPlace,
): FlatPoint {
  const stretch = stretchAt(stretches, sMm);
  const x = partOf(stretch, sMm);
  const angle = stretch.angleRad + valueAt(stretch.angles, x);
  const along = ((stretch.lengthMm + valueAt(stretch.lengths, x)) * (t - fromT)) / (toT - fromT);
  const beyond = side * (sMm - Math.min(lengthSMm, Math.max(0, sMm)));
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return {
    u: stretch.first.u + valueAt(stretch.us, x) + along * cos + beyond * sin,
    v: stretch.first.v + valueAt(stretch.vs, x) + along * sin - beyond * cos,
  };
}

/** Chord of the middle line to +u, its forward end to (0, 0); where both ends are level in x the right one is rearward. */
function placing(surface: RuledSurface, depthMm: number, raw: (place: RuledPlace) => FlatPoint) {
  const ends = [0, surface.lengthSMm].map((sMm) => ({ sMm, t: 0.5 }));
  const [start, end] = [raw(at(ends, 0)), raw(at(ends, 1))];
  const [a, b] = [pointOnRuled(surface, at(ends, 0), depthMm), pointOnRuled(surface, at(ends, 1), depthMm)];
  const [dx, dy, dz] = [b.x - a.x, b.y - a.y, b.z - a.z];
  const size = Math.abs(dx) + Math.abs(dy) + Math.abs(dz);
  const isLevel = (d: number) => Math.abs(d) <= LEVEL_RELATIVE * size;
  const isForward = (isLevel(dx) ? (isLevel(dy) ? dz : dy) : dx) < 0;
  const [origin, far] = isForward ? [end, start] : [start, end];
  const angleRad = -Math.atan2(far.v - origin.v, far.u - origin.u);
  const [cos, sin] = [Math.cos(angleRad), Math.sin(angleRad)];
  const place = ({ u, v }: FlatPoint): FlatPoint => {
    const [du, dv] = [u - origin.u, v - origin.v];
    return { u: du * cos - dv * sin, v: du * sin + dv * cos };
  };
  return { angleRad, place };
}

/** Ends of the middle line that differ by less in x, relative to their distance, are level. */
const LEVEL_RELATIVE = 1e-9;
