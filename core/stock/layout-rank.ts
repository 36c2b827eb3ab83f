import type { LaidGroup } from "./types.ts";

/**
 * How good a layout is beside others of the same group, the most important first, less is better: pieces without a place,
 * the area of the stock it takes to a square millimetre, so that an offcut is less than a whole sheet, the number of
 * sheets, and what the offcut lacks.
 */
export const layoutRank = ({ unplaced, sheets, figures }: LaidGroup): readonly number[] => [
  unplaced.length,
  Math.round(figures.sheetAreaMm2),
  sheets.length,
  -figures.offcutAreaMm2,
];
