import { formatMm, formatNumber, MINUS, THIN_SPACE } from "../../foundation/index.ts";
import type { OverBending } from "../types.ts";

/** What over-bending does to the ribs, or would do if it is wanted, with the number for every rib; or why it cannot be. */
export function wordOverBend({ applied, why, share, keepXMm, ribs }: OverBending): string {
  const given = `Let go with one skin the tray gives back up to ${formatNumber(share * 100, 1)}${THIN_SPACE}% of its cold bends.`;
  if (why !== undefined) return `${given} ${WHY_WORDS[why]}`;
  const changed = ribs.map(({ ribId, byMm }) => `${ribId} ${signed(byMm)}`).join(", ");
  const stays = `about x ${formatNumber(keepXMm, 0)}, which stays`;
  return applied
    ? `${given} The ribs are over-bent by that ${stays}; their tops stand so much higher (+) or lower than drawn, mm: ${changed}. What is measured on them is compared with the over-bent shape.`
    : `${given} Over-bent by that ${stays}, the rib tops would stand so much higher (+) or lower than drawn, mm: ${changed}.`;
}

const WHY_WORDS = {
  cradle: "The cradle brings it back to the drawn shape: over-bending is for a tray without one.",
  fence: "Its fences are cut to the drawn shape and hold the bends: it is not to be over-bent.",
  unlike: "Its sheets do not all bend alike over the ribs, so over-bent their edges would no longer meet.",
  skin: "No skin is allowed for on the face that is laminated on the jig: nothing would hold any of the bend.",
} as const satisfies Record<NonNullable<OverBending["why"]>, string>;

function signed(mm: number): string {
  const size = formatMm(Math.abs(mm));
  if (size === formatMm(0)) return size;
  return mm < 0 ? `${MINUS}${size}` : `+${size}`;
}
