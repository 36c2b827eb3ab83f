import { formatNumber } from "../../core/foundation/index.ts";
import { fromInches } from "./inches.ts";
import type { Lengths } from "./lengths-in.ts";
import type { Units } from "./read-typed.ts";

/** Steps that a ruler or a grid may have: round ones in the units that are read. */
const STEPS_MM: Readonly<Record<Units, readonly number[]>> = {
  mm: [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10_000],
  inch: [1 / 16, 1 / 8, 1 / 4, 1 / 2, 1, 2, 4, 6, 12, 24, 48, 96, 192, 384].map(fromInches),
};

/** The smallest round step that keeps its marks this far apart on the screen, mm. */
export function stepFor(units: Units, pxPerMm: number, leastPx: number): number {
  const steps = STEPS_MM[units];
  return steps.find((step) => step * pxPerMm >= leastPx) ?? steps.at(-1) ?? 1;
}

/** A grid step in mm as it stands in these units: in inches the round step that comes nearest in proportion. */
export function gridIn(units: Units, gridMm: number): number {
  if (units === "mm" || !(gridMm > 0)) return gridMm;
  const miss = (stepMm: number) => Math.abs(Math.log(stepMm / gridMm));
  return STEPS_MM.inch.reduce((best, stepMm) => (miss(stepMm) < miss(best) ? stepMm : best));
}

/** The next wider step: ten times as wide in mm, the next round one in inches. */
export function widerGrid(units: Units, gridMm: number): number {
  const next = units === "inch" ? STEPS_MM.inch.find((stepMm) => stepMm > gridMm) : undefined;
  return next ?? gridMm * 10;
}

/** A step as it is said beside a snap or on a ruler: no decimals where there are none. */
export const wordGrid = (lengths: Lengths, gridMm: number): string =>
  lengths.units === "mm" ? formatNumber(gridMm, Number.isInteger(gridMm) ? 0 : 1) : lengths.show(gridMm);
