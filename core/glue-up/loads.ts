import type { GlueUnit } from "./glue-units.ts";
import type { StepKind } from "./types.ts";

/** A piece on so many ribs lies by itself; on fewer it hangs on its glued neighbours. */
const RIBS_TO_LIE = 2;

/**
 * Whether pieces load the joints of those that they are glued to: not where all of them lie on ribs of their own; always
 * where one is pressed in between others or stands on them.
 */
export function isLoading(
  kind: StepKind,
  come: readonly GlueUnit[],
  neighbours: readonly GlueUnit[],
): boolean {
  if (kind !== "lay") return true;
  return [...come, ...neighbours].some(({ ribIds }) => ribIds.length < RIBS_TO_LIE);
}
