import { creaseTurn } from "./crease-turn.ts";
import { integralAt, STRETCH_COUNT, STRETCH_POINTS, writeIntegral } from "./stretch-points.ts";
import { motionOnRuling, type StripBounds } from "./strip-motion.ts";
import { SWEEP, SWEEP_NUMBERS } from "./sweep-ruling.ts";
import type { RuledSurface } from "./types.ts";

/**
 * Where `layStretches` writes what of each stretch: where it begins and its span, the ruling's angle there, the flat
 * place of its first end and its length; then how these grow over the stretch, as integrals of x in [0, 1].
 */
export const LAID = {
  fromMm: 0,
  spanMm: 1,
  angle: 2,
  u: 3,
  v: 4,
  length: 5,
  angles: 6,
  us: 6 + STRETCH_COUNT,
  vs: 6 + 2 * STRETCH_COUNT,
  lengths: 6 + 3 * STRETCH_COUNT,
} as const;
export const LAID_NUMBERS = 6 + 4 * STRETCH_COUNT;

/** The stretches of a sheet, or of one strip of it, laid flat one after the other; the first ruling along +u from (0, 0). */
export function layStretches(surface: RuledSurface, { depthMm, fromT, toT }: StripBounds): Float64Array {
  const laid = new Float64Array(surface.stretches.length * LAID_NUMBERS);
  const [angles, us, vs, lengths] = [room(), room(), room(), room()];
  const [alongs, acrosses] = [room(), room()];
  let angle = 0;
  let u = 0;
  let v = 0;
  surface.stretches.forEach(({ fromMm, toMm, interval, sweeps, offset }, index) => {
    const o = index * LAID_NUMBERS;
    const span = toMm - fromMm;
    if (surface.creases.some(({ sMm }) => sMm === fromMm)) {
      // Round a crease a place at a depth goes on by an arc, against the flat's direction square to the ruling where the
      // normal turns right-handed about it.
      const across = -depthMm * creaseTurn(surface, fromMm, interval);
      u -= across * Math.sin(angle);
      v += across * Math.cos(angle);
    }
    for (let k = 0; k < STRETCH_COUNT; k++) {
      const place = offset + k * SWEEP_NUMBERS;
      const lengthMm = (sweeps[place + SWEEP.lengthMm] ?? 0) * (toT - fromT);
      const from = motionOnRuling(sweeps, place, depthMm, fromT);
      const to = motionOnRuling(sweeps, place, depthMm, toT);
      alongs[k] = span * from.along;
      acrosses[k] = span * from.across;
      angles[k] = lengthMm === 0 ? 0 : (span * (to.across - from.across)) / lengthMm;
      lengths[k] = span * (to.along - from.along);
    }
    laid[o + LAID.fromMm] = fromMm;
    laid[o + LAID.spanMm] = span;
    laid[o + LAID.angle] = angle;
    laid[o + LAID.u] = u;
    laid[o + LAID.v] = v;
    writeIntegral(angles, laid, o + LAID.angles);
    for (let k = 0; k < STRETCH_COUNT; k++) {
      const turned = angle + integralAt(laid, o + LAID.angles, STRETCH_POINTS[k] ?? 0);
      const cos = Math.cos(turned);
      const sin = Math.sin(turned);
      us[k] = (alongs[k] ?? 0) * cos - (acrosses[k] ?? 0) * sin;
      vs[k] = (alongs[k] ?? 0) * sin + (acrosses[k] ?? 0) * cos;
    }
    writeIntegral(us, laid, o + LAID.us);
    writeIntegral(vs, laid, o + LAID.vs);
    writeIntegral(lengths, laid, o + LAID.lengths);
    const middle = (sweeps[offset + MIDDLE * SWEEP_NUMBERS + SWEEP.lengthMm] ?? 0) * (toT - fromT);
    laid[o + LAID.length] = middle - integralAt(laid, o + LAID.lengths, STRETCH_POINTS[MIDDLE] ?? 0);
    angle += integralAt(laid, o + LAID.angles, 1);
    u += integralAt(laid, o + LAID.us, 1);
    v += integralAt(laid, o + LAID.vs, 1);
  });
  return laid;
}

/** The point of a stretch whose ruling's length anchors the others. */
const MIDDLE = 2;

const room = (): Float64Array => new Float64Array(STRETCH_COUNT);
