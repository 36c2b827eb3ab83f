import { roundTo } from "../../../core/foundation/index.ts";
import { widerGrid, wordGrid } from "../../lengths/index.ts";
import type { ToolContext } from "../types.ts";
import type { Axis, Coordinate } from "./coordinate.ts";
import type { SnapRequest } from "./snap-request.ts";

/** Grid lines nearer together than this are no help to the hand, px. */
const LEAST_GRID_PX = 2;

/** Decimals of a mm that a place in whole steps keeps: steps of an inch have no shorter numbers. */
const STEP_DECIMALS = 9;

/** A sum of whole steps without the noise of its last digits. */
export const withoutNoise = (mm: number): number => roundTo(mm, STEP_DECIMALS);

export const inWholeSteps = (value: number, stepMm: number): number =>
  withoutNoise(Math.round(value / stepMm) * stepMm);

/** A grid that the hand can feel at this scale: the chosen step, or the next wider ones. */
export function stepOfGrid({ snaps, lengths }: ToolContext, mmPerPx: number): number | undefined {
  if (!(snaps.gridMm > 0)) return undefined;
  let stepMm = snaps.gridMm;
  while (stepMm < LEAST_GRID_PX * mmPerPx) stepMm = widerGrid(lengths.units, stepMm);
  return stepMm;
}

export function onGrid({ place, context }: SnapRequest, value: number, axis: Axis): Coordinate | undefined {
  const stepMm = stepOfGrid(context, place.mmPerPx[axis]);
  if (stepMm === undefined) return undefined;
  const rounded = inWholeSteps(value, stepMm);
  return {
    value: rounded === 0 ? 0 : rounded,
    reason: `grid ${wordGrid(context.lengths, stepMm)}`,
    sign: (at) => ({ kind: "grid", at }),
  };
}

/** So near a coordinate must lie to be drawn onto something that the grid should not be lost for. */
export function reachBesideGrid({ place, context }: SnapRequest, axis: Axis, reachPx: number): number {
  const { grid, isOn } = context.snaps;
  const stepMm = grid && isOn ? stepOfGrid(context, place.mmPerPx[axis]) : undefined;
  return Math.min(reachPx * place.mmPerPx[axis], (stepMm ?? Number.POSITIVE_INFINITY) / 2);
}
