import { at } from "../foundation/index.ts";
import type { BendLine } from "../surfaces/index.ts";
import type { BentCurve } from "./bent-curve.ts";

/** A stretch of a sheet along the middle of its foam, mm. */
export interface Span {
  readonly fromMm: number;
  readonly toMm: number;
}

/** How a stretch turns: at even steps along the middle of its foam, rad from its start; and the sense of its whole turn. */
export interface TurnTable extends Span {
  readonly turnsRad: readonly number[];
  readonly sense: 1 | -1;
}

/** Steps of the table: on a spline of 300 mm its turn is read to some millionths. */
const STEPS = 256;

export function turnTable(line: BendLine, { fromMm, toMm }: Span): TurnTable {
  const start = line.turnAt(fromMm);
  const turnsRad = Array.from(
    { length: STEPS + 1 },
    (_, i) => line.turnAt(fromMm + ((toMm - fromMm) * i) / STEPS) - start,
  );
  return { fromMm, toMm, turnsRad, sense: at(turnsRad, -1) < 0 ? -1 : 1 };
}

/**
 * A stretch of a sheet's bend along the fibre `offsetMm` from the middle of its foam (toward the inward normal), its turn
 * counted in the sense in which the stretch turns as a whole.
 */
export function stretchCurve({ fromMm, toMm, turnsRad, sense }: TurnTable, offsetMm: number): BentCurve {
  const alongs = turnsRad.map((turned, i) => ((toMm - fromMm) * i) / STEPS - offsetMm * turned);
  const turns = turnsRad.map((turned) => sense * turned);
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
