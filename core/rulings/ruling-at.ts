import { addSpace, crossSpace, dotSpace, type SpacePoint } from "../foundation/index.ts";
import { sweepAt } from "./sweep-at.ts";
import type { EdgePlace, RuledPlace, RuledSurface, Ruling, Sweep } from "./types.ts";

/** The ruling of the drawn surface at s, kept within the ends; on a ruling of the pairing the side after it. */
export function rulingAt(surface: RuledSurface, sMm: number): Ruling {
  const within = Math.min(surface.lengthSMm, Math.max(0, sMm));
  return rulingOf(sweepAt(surface, within), within);
}

/** A swept ruling as a ruling. */
export function rulingOf(sweep: Sweep, sMm: number): Ruling {
  const { first, second, direction, lengthMm, firstNormal, secondNormal, fan } = sweep;
  const turn = crossSpace(firstNormal, secondNormal);
  const twistRad = Math.atan2(dotSpace(turn, direction), dotSpace(firstNormal, secondNormal));
  const rate = lengthMm > 0 ? twistRad / lengthMm : 0;
  const atFirst = curvatureOf(first, firstNormal, direction, rate);
  const atSecond = curvatureOf(second, secondNormal, direction, rate);
  return {
    sMm,
    firstMm: sweep.firstMm,
    secondMm: sweep.secondMm,
    fan,
    from: first.point,
    to: second.point,
    direction,
    lengthMm,
    normal: sweep.normal,
    twistRad,
    firstCurvature: fan === "first" ? atSecond : atFirst,
    secondCurvature: fan === "second" ? atFirst : atSecond,
  };
}

/**
 * Normal curvature square to the ruling at one end: with e = normal × direction, c and s the parts of the tangent along
 * the ruling and e, and τ the rate of twist, the edge's own normal curvature is κ s² + 2 τ c s (Euler; the curvature
 * along a ruling is none).
 */
function curvatureOf(
  { tangent, curvature }: EdgePlace,
  normal: SpacePoint,
  direction: SpacePoint,
  rate: number,
): number {
  const along = dotSpace(tangent, direction);
  const across = dotSpace(tangent, crossSpace(normal, direction));
  const own = dotSpace(curvature, normal);
  if (across === 0) return 0;
  return (own - 2 * rate * along * across) / (across * across);
}

/**
 * A place of the sheet in space, `depthMm` inward from the drawn surface along the ruling's normal. Beyond t = 0 and 1
 * the ruling goes on straight; beyond the first and last ruling the sheet goes on flat.
 */
export function pointOnRuled(surface: RuledSurface, { sMm, t }: RuledPlace, depthMm: number): SpacePoint {
  const within = Math.min(surface.lengthSMm, Math.max(0, sMm));
  const sweep = sweepAt(surface, within);
  const { first, direction, lengthMm, normal } = sweep;
  const onRuling = addSpace(addSpace(first.point, direction, t * lengthMm), normal, depthMm);
  if (within === sMm) return onRuling;
  return addSpace(onRuling, sweepDirection(surface, sweep), sMm - within);
}

/** The direction in the sheet square to the ruling, the way that s grows; unit. */
export const sweepDirection = ({ side }: RuledSurface, { normal, direction }: Sweep): SpacePoint => {
  const { x, y, z } = crossSpace(normal, direction);
  return { x: -side * x, y: -side * y, z: -side * z };
};
