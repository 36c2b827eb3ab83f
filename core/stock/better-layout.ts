import type { LaidGroup } from "./types.ts";

/** Whether a layout is better than another of the same group: more pieces placed, then fewer sheets, then a larger offcut. */
export function isBetterLayout(one: LaidGroup, other: LaidGroup): boolean {
  const byUnplaced = other.unplaced.length - one.unplaced.length;
  const bySheets = other.sheets.length - one.sheets.length;
  const byOffcut = one.figures.offcutAreaMm2 - other.figures.offcutAreaMm2;
  return (byUnplaced || bySheets || byOffcut) > 0;
}
