import type { Jig, Rib } from "../types.ts";

/** The x (across) or y (along) as drawn of the foam that lies over a rib: another one than the rib's where that is over-bent. */
export function drawnPlaceMm(
  { id, atMm }: Pick<Rib, "id" | "atMm">,
  { overBend }: Pick<Jig, "overBend">,
): number {
  if (!overBend?.applied) return atMm;
  return overBend.ribs.find(({ ribId }) => ribId === id)?.drawnMm ?? atMm;
}
