import type { SpacePoint } from "../foundation/index.ts";
import { intervalAt } from "./pairing-at.ts";
import { SWEEP, SWEEP_NUMBERS, sweepRoom, sweepRuling } from "./sweep-ruling.ts";
import type { PairedEdges } from "./types.ts";

/** The plain facts of one ruling, as `sweepRuling` finds them. */
export interface Sweep {
  readonly numbers: Float64Array;
  readonly lengthMm: number;
  readonly from: SpacePoint;
  readonly direction: SpacePoint;
  readonly normal: SpacePoint;
}

/** The ruling at s (kept within the ends), inside the interval named. */
export function sweepAt(paired: PairedEdges, sMm: number, interval = intervalAt(paired, sMm)): Sweep {
  const numbers = new Float64Array(SWEEP_NUMBERS);
  sweepRuling(paired, sMm, interval, { out: numbers, o: 0, room: sweepRoom() });
  return {
    numbers,
    lengthMm: numbers[SWEEP.lengthMm] ?? 0,
    from: sweptPoint(numbers, SWEEP.from),
    direction: sweptPoint(numbers, SWEEP.direction),
    normal: sweptPoint(numbers, SWEEP.normal),
  };
}

/** A point or vector of a sweep. */
export const sweptPoint = (numbers: Float64Array, place: number): SpacePoint => ({
  x: numbers[place] ?? 0,
  y: numbers[place + 1] ?? 0,
  z: numbers[place + 2] ?? 0,
});
