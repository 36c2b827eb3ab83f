import { addSpace, at, crossSpace, type SpacePoint } from "../foundation/index.ts";
import { intervalAt } from "./pairing-at.ts";
import { type Sweep, sweepAt, sweptPoint } from "./sweep-at.ts";
import { SWEEP } from "./sweep-ruling.ts";
import type { PairedEdges, RuledPlace, RuledSurface, Ruling } from "./types.ts";

/** The ruling of the drawn surface at s, kept within the ends; on a ruling of the pairing the side after it. */
export function rulingAt(surface: RuledSurface, sMm: number): Ruling {
  const within = Math.min(surface.lengthSMm, Math.max(0, sMm));
  const interval = intervalAt(surface, within);
  const { numbers, from, direction, normal, lengthMm } = sweepAt(surface, within, interval);
  return {
    sMm: within,
    firstMm: numbers[SWEEP.firstMm] ?? 0,
    secondMm: numbers[SWEEP.secondMm] ?? 0,
    fan: at(surface.rulings, interval).fanAfter,
    from,
    to: sweptPoint(numbers, SWEEP.to),
    direction,
    lengthMm,
    normal,
    twistRad: numbers[SWEEP.twistRad] ?? 0,
    firstCurvature: numbers[SWEEP.firstCurvature] ?? 0,
    secondCurvature: numbers[SWEEP.secondCurvature] ?? 0,
  };
}

/**
 * A place of the sheet in space, `depthMm` inward from the drawn surface along the ruling's normal. Beyond t = 0 and 1
 * the ruling goes on straight; beyond the first and last ruling the sheet goes on flat.
 */
export function pointOnRuled(surface: RuledSurface, { sMm, t }: RuledPlace, depthMm: number): SpacePoint {
  const within = Math.min(surface.lengthSMm, Math.max(0, sMm));
  const sweep = sweepAt(surface, within);
  const { from, direction, lengthMm, normal } = sweep;
  const onRuling = addSpace(addSpace(from, direction, t * lengthMm), normal, depthMm);
  if (within === sMm) return onRuling;
  return addSpace(onRuling, sweepDirection(surface, sweep), sMm - within);
}

/** The direction in the sheet square to the ruling, the way that s grows; unit. */
export const sweepDirection = ({ side }: PairedEdges, { normal, direction }: Sweep): SpacePoint => {
  const { x, y, z } = crossSpace(normal, direction);
  return { x: -side * x, y: -side * y, z: -side * z };
};
