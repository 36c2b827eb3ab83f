import { formatMm } from "./format.ts";
import type { PanelBar } from "./problems.ts";

/** Why a fence cannot be cut from a panel, and what would help: a sentence or two. */
export function wordPanelBar(bar: PanelBar): string {
  switch (bar.why) {
    case "seat":
      return "Its upper edge sits on the foam and is glued there before the skins. Seat it on the finished skin for that.";
    case "curve":
      return `A cured panel stays flat, and its line leaves the straight by ${formatMm(bar.offMm)} mm. Draw the line straight for that.`;
    case "cloth":
      return "There is no ply to lay on it. Choose plies under Skin for that.";
    case "stock":
      return `No foam sheet of ${formatMm(bar.foamMm)} mm is in stock to laminate. Add one under Stock for that.`;
    case "size":
      return `It is ${formatMm(bar.lengthMm)} by ${formatMm(bar.heightMm)} mm with its saw cuts, and the largest foam sheet gives a panel of ${formatMm(bar.longestMm)} by ${formatMm(bar.highestMm)} mm inside its trimmed edges. Take a larger sheet, or split the fence.`;
  }
}
