import { at } from "../../foundation/index.ts";
import type { Lane } from "./types.ts";

/** A lane made ready to be judged on many sets of ribs: its places in columns, and what it weighs at each. */
export interface QuickLane {
  readonly lane: Lane;
  readonly placeMm: Float64Array;
  readonly alongMm: Float64Array;
  readonly forcedMm: Float64Array;
  readonly forcedSlope: Float64Array;
  /** The weight square to the foam from the lane's start, N for each mm of width. */
  readonly weighedN: Float64Array;
}

export function quickLane(lane: Lane): QuickLane {
  const { places, foam } = lane;
  const column = (of: (index: number) => number) => Float64Array.from(places, (_, i) => of(i));
  const weighedN = new Float64Array(places.length);
  for (let i = 1; i < places.length; i++) {
    const [before, here] = [at(places, i - 1), at(places, i)];
    const share = (before.upShare + here.upShare) / 2;
    weighedN[i] = (weighedN[i - 1] ?? 0) + foam.weightMPa * share * (here.alongMm - before.alongMm);
  }
  return {
    lane,
    placeMm: column((i) => at(places, i).placeMm),
    alongMm: column((i) => at(places, i).alongMm),
    forcedMm: column((i) => at(places, i).forcedMm),
    forcedSlope: column((i) => at(places, i).forcedSlope),
    weighedN,
  };
}

/** The number at a place of a column; 0 beyond it. */
export const num = (column: Float64Array, i: number): number => column[i] ?? 0;

/** The step of an ascending column that a value lies in, looked for from a guess onward; the first or last one beyond. */
export function stepFrom(column: Float64Array, value: number, guess: number): number {
  let i = Math.min(Math.max(0, guess), column.length - 2);
  while (i > 0 && num(column, i) > value) i--;
  while (i < column.length - 2 && num(column, i + 1) <= value) i++;
  return i;
}

/** One column read at a value of another, straight between its places and beyond them. */
export function readAt(keys: Float64Array, values: Float64Array, key: number, step: number): number {
  const [k, v] = [num(keys, step), num(values, step)];
  return v + ((num(values, step + 1) - v) * (key - k)) / (num(keys, step + 1) - k);
}

/** What the foam must be bent away from flat at a length along a lane: as `forcedAt`. */
export function quickForced({ alongMm, forcedMm, forcedSlope }: QuickLane, mm: number, step: number): number {
  const last = alongMm.length - 1;
  if (mm <= num(alongMm, 0)) return num(forcedMm, 0) + num(forcedSlope, 0) * (mm - num(alongMm, 0));
  if (mm >= num(alongMm, last))
    return num(forcedMm, last) + num(forcedSlope, last) * (mm - num(alongMm, last));
  const h = num(alongMm, step + 1) - num(alongMm, step);
  const t = (mm - num(alongMm, step)) / h;
  const [r, s] = [1 - t, t];
  return (
    r * r * (1 + 2 * s) * num(forcedMm, step) +
    s * s * (1 + 2 * r) * num(forcedMm, step + 1) +
    h * r * s * (r * num(forcedSlope, step) - s * num(forcedSlope, step + 1))
  );
}
