import type { LaidGroup } from "./types.ts";

/**
 * How good a layout is beside others of the same group, the most important first, less is better: pieces without a place,
 * sheets, and what the offcut lacks.
 */
export const layoutRank = ({ unplaced, sheets, figures }: LaidGroup): readonly number[] => [
  unplaced.length,
  sheets.length,
  -figures.offcutAreaMm2,
];
