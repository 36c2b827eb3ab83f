import { at } from "../foundation/index.ts";
import type { BendLine } from "../surfaces/index.ts";
import type { BentCurve } from "./bent-curve.ts";

/** A stretch of a sheet along the middle of its foam, mm. */
export interface Span {
  readonly fromMm: number;
  readonly toMm: number;
}

/** Steps of the table that a curve is told by: on a spline of 300 mm its turn is read to some millionths. */
const STEPS = 256;

/**
 * A stretch of a sheet's bend along the fibre `offsetMm` from the middle of its foam (toward the inward normal), its turn
 * counted in the sense in which the stretch turns as a whole.
 */
export function stretchCurve(line: BendLine, { fromMm, toMm }: Span, offsetMm: number): BentCurve {
  const start = line.turnAt(fromMm);
  const sense = line.turnAt(toMm) < start ? -1 : 1;
  const alongs: number[] = [];
  const turns: number[] = [];
  for (let i = 0; i <= STEPS; i++) {
    const middleMm = fromMm + ((toMm - fromMm) * i) / STEPS;
    const turned = line.turnAt(middleMm) - start;
    alongs.push(middleMm - fromMm - offsetMm * turned);
    turns.push(sense * turned);
  }
  return {
    lengthMm: at(alongs, -1),
    turnAt: (alongMm) => {
      let [low, high] = [0, STEPS];
      while (high - low > 1) {
        const middle = (low + high) >> 1;
        if (at(alongs, middle) <= alongMm) low = middle;
        else high = middle;
      }
      const [a, b] = [at(alongs, low), at(alongs, high)];
      return at(turns, low) + ((at(turns, high) - at(turns, low)) * (alongMm - a)) / (b - a || 1);
    },
  };
}
