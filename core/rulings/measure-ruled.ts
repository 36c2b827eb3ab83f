import { crossSpace, dotSpace, type SpacePoint } from "../foundation/index.ts";
import { creaseTurn } from "./crease-turn.ts";
import { intervalAt } from "./pairing-at.ts";
import { integralOf, STRETCH_POINTS } from "./stretch-points.ts";
import { endVelocity } from "./strip-motion.ts";
import { sweepAt } from "./sweep-at.ts";
import type { RuledSurface, Sweep } from "./types.ts";

/**
 * Area in space of a sheet at a depth, or of its strip between two constant t: the quadrature of |X_s × X_t|, five
 * points along between stops and ten across; mm². It knows nothing of the flat pattern.
 */
export function areaOfRuled(
  surface: RuledSurface,
  depthMm: number,
  [fromT, toT]: readonly [number, number] = [0, 1],
): number {
  const middleT = (fromT + toT) / 2;
  const smooth = overStretches(
    surface,
    (sweep) => alongRuling(sweep, depthMm, [fromT, middleT]) + alongRuling(sweep, depthMm, [middleT, toT]),
  );
  return smooth + overCreases(surface, depthMm, (sweep, arcMm) => arcMm * sweep.lengthMm * (toT - fromT));
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
  const smooth = overStretches(surface, (sweep) => size(endVelocity(sweep, depthMm, t)), within);
  return smooth + overCreases(surface, depthMm, (_, arcMm) => arcMm, within);
}

/** The area swept by a part of a ruling, by s. */
function alongRuling(sweep: Sweep, depthMm: number, [fromT, toT]: readonly [number, number]): number {
  const across = times(sweep.direction, sweep.lengthMm * (toT - fromT));
  return integralOf(
    STRETCH_POINTS.map((x) =>
      size(crossSpace(endVelocity(sweep, depthMm, fromT + x * (toT - fromT)), across)),
    ),
  );
}

function overStretches(
  surface: RuledSurface,
  f: (sweep: Sweep) => number,
  [leastMm, mostMm]: readonly [number, number] = [0, surface.lengthSMm],
): number {
  return surface.stretches.reduce(
    (sum, { fromMm, toMm, sweeps }) =>
      fromMm < leastMm - SAME_STOP_MM || toMm > mostMm + SAME_STOP_MM
        ? sum
        : sum + (toMm - fromMm) * integralOf(sweeps.map(f)),
    0,
  );
}

/** Stops nearer than this are one. */
const SAME_STOP_MM = 1e-7;

/** At a crease the surface at a depth goes round by an arc, longer where the depth lies outside of the turn. */
function overCreases(
  surface: RuledSurface,
  depthMm: number,
  f: (sweep: Sweep, arcMm: number) => number,
  [leastMm, mostMm]: readonly [number, number] = [0, surface.lengthSMm],
): number {
  if (depthMm === 0) return 0;
  return surface.creases.reduce((sum, { sMm }) => {
    if (sMm < leastMm || sMm > mostMm) return sum;
    const interval = intervalAt(surface, sMm);
    const arcMm = surface.side * depthMm * creaseTurn(surface, sMm, interval);
    return sum + f(sweepAt(surface, sMm, interval), arcMm);
  }, 0);
}

const times = (a: SpacePoint, factor: number): SpacePoint => ({
  x: a.x * factor,
  y: a.y * factor,
  z: a.z * factor,
});
const size = (a: SpacePoint): number => Math.sqrt(dotSpace(a, a));
