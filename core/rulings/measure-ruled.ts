import { crossSpace, dotSpace, type SpacePoint } from "../foundation/index.ts";
import { creaseTurn } from "./crease-turn.ts";
import { intervalAt } from "./pairing-at.ts";
import { integralOf, STRETCH_POINTS } from "./stretch-points.ts";
import { endVelocity } from "./strip-motion.ts";
import { sweepAt } from "./sweep-at.ts";
import type { RuledSurface, Sweep } from "./types.ts";

/**
 * Area in space of a sheet at a depth, or of its strip between two constant t: the quadrature of |X_s × X_t|, five
 * points each way between stops; mm². It knows nothing of the flat pattern.
 */
export function areaOfRuled(
  surface: RuledSurface,
  depthMm: number,
  [fromT, toT]: readonly [number, number] = [0, 1],
): number {
  const smooth = overStretches(surface, (sweep) => {
    const across = times(sweep.direction, sweep.lengthMm * (toT - fromT));
    return integralOf(
      STRETCH_POINTS.map((x) =>
        size(crossSpace(endVelocity(sweep, depthMm, fromT + x * (toT - fromT)), across)),
      ),
    );
  });
  return smooth + overCreases(surface, depthMm, (sweep, arcMm) => arcMm * sweep.lengthMm * (toT - fromT));
}

/** Length in space of the curve of constant t at a depth: t = 0 and 1 are the edges; mm. */
export function lengthOnRuled(surface: RuledSurface, depthMm: number, t: number): number {
  const smooth = overStretches(surface, (sweep) => size(endVelocity(sweep, depthMm, t)));
  return smooth + overCreases(surface, depthMm, (_, arcMm) => arcMm);
}

function overStretches(surface: RuledSurface, f: (sweep: Sweep) => number): number {
  return surface.stretches.reduce(
    (sum, { fromMm, toMm, sweeps }) => sum + (toMm - fromMm) * integralOf(sweeps.map(f)),
    0,
  );
}

/** At a crease the surface at a depth goes round by an arc, longer where the depth lies outside of the turn. */
function overCreases(
  surface: RuledSurface,
  depthMm: number,
  f: (sweep: Sweep, arcMm: number) => number,
): number {
  if (depthMm === 0) return 0;
  return surface.creases.reduce((sum, { sMm }) => {
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
