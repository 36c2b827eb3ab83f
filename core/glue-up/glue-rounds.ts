import { type HeldLine, wetMinutes } from "./step-minutes.ts";
import type { GlueRound } from "./types.ts";

/** A line of glue, and the piece that comes with it. */
export interface RoundLine extends HeldLine {
  readonly id: string;
  readonly unitId: string;
}

/**
 * The lines of a step in as few goes as the glue's open time allows, in the order of the pieces: what is glued to one piece
 * stays together where it can, else its longest line goes first. A line that alone takes longer is a go of its own.
 */
export function glueRounds(
  lines: readonly RoundLine[],
  openMinutes: number,
  hands: number,
): readonly GlueRound[] {
  const fits = (some: readonly RoundLine[]) => wetMinutes(some, hands) <= openMinutes + 1e-9;
  const unitIds = [...new Set(lines.map(({ unitId }) => unitId))];
  const groups = unitIds.flatMap((unitId) => {
    const own = lines.filter((line) => line.unitId === unitId);
    if (fits(own)) return [own];
    return own.toSorted((a, b) => b.lengthMm - a.lengthMm).map((line) => [line]);
  });
  const goes: RoundLine[][] = [];
  for (const group of groups) {
    const last = goes.at(-1);
    if (last !== undefined && fits([...last, ...group])) last.push(...group);
    else goes.push([...group]);
  }
  return goes.map((go) => ({ joins: go.map(({ id }) => id), wetMinutes: wetMinutes(go, hands) }));
}
