import { creaseTurn } from "./crease-turn.ts";
import { intervalAt } from "./pairing-at.ts";
import { STRETCH_POINTS, STRETCH_WEIGHTS } from "./stretch-points.ts";
import { endVelocity } from "./strip-motion.ts";
import { sweepAt } from "./sweep-at.ts";
import { SWEEP, SWEEP_NUMBERS } from "./sweep-ruling.ts";
import type { RuledSurface } from "./types.ts";

/**
 * Area in space of a sheet at a depth, or of its strip between two constant t: the quadrature of |X_s × X_t| by Gauss
 * along between stops and twice across; mm². It knows nothing of the flat pattern.
 */
export function areaOfRuled(
  surface: RuledSurface,
  depthMm: number,
  [fromT, toT]: readonly [number, number] = [0, 1],
): number {
  const middleT = (fromT + toT) / 2;
  const smooth = overStretches(
    surface,
    (sweeps, o) =>
      alongRuling(sweeps, o, depthMm, [fromT, middleT]) + alongRuling(sweeps, o, depthMm, [middleT, toT]),
  );
  return smooth + overCreases(surface, depthMm, (lengthMm, arcMm) => arcMm * lengthMm * (toT - fromT));
}

/**
 * Length in space of the curve of constant t at a depth: t = 0 and 1 are the edges; of all of it, or between two stops
 * of the surface; mm.
 */
export function lengthOnRuled(
  surface: RuledSurface,
  depthMm: number,
  t: number,
  within: readonly [fromMm: number, toMm: number] = [0, surface.lengthSMm],
): number {
  const smooth = overStretches(
    surface,
    (sweeps, o) => {
      const x = endVelocity(sweeps, o, depthMm, t);
      const y = endVelocity(sweeps, o + 1, depthMm, t);
      const z = endVelocity(sweeps, o + 2, depthMm, t);
      return Math.sqrt(x * x + y * y + z * z);
    },
    within,
  );
  return smooth + overCreases(surface, depthMm, (_, arcMm) => arcMm, within);
}

/** The area swept by a part of a ruling, by s. */
function alongRuling(
  sweeps: Float64Array,
  o: number,
  depthMm: number,
  [fromT, toT]: readonly [number, number],
): number {
  const at = (place: number) => sweeps[o + place] ?? 0;
  const [dx, dy, dz] = [at(SWEEP.direction), at(SWEEP.direction + 1), at(SWEEP.direction + 2)];
  let sum = 0;
  STRETCH_POINTS.forEach((part, k) => {
    const t = fromT + part * (toT - fromT);
    const x = endVelocity(sweeps, o, depthMm, t);
    const y = endVelocity(sweeps, o + 1, depthMm, t);
    const z = endVelocity(sweeps, o + 2, depthMm, t);
    const [cx, cy, cz] = [y * dz - z * dy, z * dx - x * dz, x * dy - y * dx];
    sum += (STRETCH_WEIGHTS[k] ?? 0) * Math.sqrt(cx * cx + cy * cy + cz * cz);
  });
  return sum * at(SWEEP.lengthMm) * (toT - fromT);
}

function overStretches(
  surface: RuledSurface,
  f: (sweeps: Float64Array, o: number) => number,
  [leastMm, mostMm]: readonly [number, number] = [0, surface.lengthSMm],
): number {
  return surface.stretches.reduce((sum, { fromMm, toMm, sweeps, offset }) => {
    if (fromMm < leastMm - SAME_STOP_MM || toMm > mostMm + SAME_STOP_MM) return sum;
    const parts = STRETCH_WEIGHTS.map((weight, k) => weight * f(sweeps, offset + k * SWEEP_NUMBERS));
    return sum + (toMm - fromMm) * parts.reduce((a, b) => a + b, 0);
  }, 0);
}

/** Stops nearer than this are one. */
const SAME_STOP_MM = 1e-7;

/** At a crease the surface at a depth goes round by an arc, longer where the depth lies outside of the turn. */
function overCreases(
  surface: RuledSurface,
  depthMm: number,
  f: (lengthMm: number, arcMm: number) => number,
  [leastMm, mostMm]: readonly [number, number] = [0, surface.lengthSMm],
): number {
  if (depthMm === 0) return 0;
  return surface.creases.reduce((sum, { sMm }) => {
    if (sMm < leastMm || sMm > mostMm) return sum;
    const interval = intervalAt(surface, sMm);
    const arcMm = surface.side * depthMm * creaseTurn(surface, sMm, interval);
    return sum + f(sweepAt(surface, sMm, interval).lengthMm, arcMm);
  }, 0);
}
