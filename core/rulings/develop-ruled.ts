import type { FlatPoint } from "../foundation/index.ts";
import { LAID, LAID_NUMBERS, layStretches } from "./lay-stretches.ts";
import { pointOnRuled } from "./ruling-at.ts";
import { integralAt } from "./stretch-points.ts";
import type { StripBounds } from "./strip-motion.ts";
import type { Development, RuledPlace, RuledSurface } from "./types.ts";

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
  const laid = layStretches(surface, bounds);
  const raw = (place: RuledPlace) => rawFlat(surface, laid, bounds, place);
  const { angleRad, place } = placing(surface, depthMm, raw);
  return {
    depthMm,
    flatAt: (where) => place(raw(where)),
    rulingAngleAt: (sMm) => {
      const o = stretchAt(laid, sMm);
      return (laid[o + LAID.angle] ?? 0) + integralAt(laid, o + LAID.angles, partOf(laid, o, sMm)) + angleRad;
    },
  };
}

/** Where the numbers of the stretch begin that s lies on. */
function stretchAt(laid: Float64Array, sMm: number): number {
  let low = 0;
  let high = laid.length / LAID_NUMBERS - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((laid[middle * LAID_NUMBERS + LAID.fromMm] ?? 0) <= sMm) low = middle;
    else high = middle - 1;
  }
  return low * LAID_NUMBERS;
}

const partOf = (laid: Float64Array, o: number, sMm: number): number =>
  Math.min(1, Math.max(0, (sMm - (laid[o + LAID.fromMm] ?? 0)) / (laid[o + LAID.spanMm] ?? 1)));

function rawFlat(
  { side, lengthSMm }: RuledSurface,
  laid: Float64Array,
  { fromT, toT }: StripBounds,
  { sMm, t }: RuledPlace,
): FlatPoint {
  const o = stretchAt(laid, sMm);
  const x = partOf(laid, o, sMm);
  const angle = (laid[o + LAID.angle] ?? 0) + integralAt(laid, o + LAID.angles, x);
  const length = (laid[o + LAID.length] ?? 0) + integralAt(laid, o + LAID.lengths, x);
  const along = (length * (t - fromT)) / (toT - fromT);
  const beyond = side * (sMm - Math.min(lengthSMm, Math.max(0, sMm)));
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  return {
    u: (laid[o + LAID.u] ?? 0) + integralAt(laid, o + LAID.us, x) + along * cos + beyond * sin,
    v: (laid[o + LAID.v] ?? 0) + integralAt(laid, o + LAID.vs, x) + along * sin - beyond * cos,
  };
}

/** Ends of the middle line that differ by less in x, relative to their distance, are level. */
const LEVEL_RELATIVE = 1e-9;

/** Chord of the middle line to +u, its forward end to (0, 0); where both ends are level in x the right one is rearward. */
function placing(surface: RuledSurface, depthMm: number, raw: (place: RuledPlace) => FlatPoint) {
  const [front, rear] = [
    { sMm: 0, t: 0.5 },
    { sMm: surface.lengthSMm, t: 0.5 },
  ];
  const [a, b] = [pointOnRuled(surface, front, depthMm), pointOnRuled(surface, rear, depthMm)];
  const [dx, dy, dz] = [b.x - a.x, b.y - a.y, b.z - a.z];
  const size = Math.abs(dx) + Math.abs(dy) + Math.abs(dz);
  const isLevel = (d: number) => Math.abs(d) <= LEVEL_RELATIVE * size;
  const isForward = (isLevel(dx) ? (isLevel(dy) ? dz : dy) : dx) < 0;
  const [origin, far] = isForward ? [raw(rear), raw(front)] : [raw(front), raw(rear)];
  const angleRad = -Math.atan2(far.v - origin.v, far.u - origin.u);
  const [cos, sin] = [Math.cos(angleRad), Math.sin(angleRad)];
  const place = ({ u, v }: FlatPoint): FlatPoint => {
    const du = u - origin.u;
    const dv = v - origin.v;
    return { u: du * cos - dv * sin, v: du * sin + dv * cos };
  };
  return { angleRad, place };
}
