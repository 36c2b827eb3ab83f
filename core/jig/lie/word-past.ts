import { formatMm } from "../../foundation/index.ts";
import type { LiePast } from "./types.ts";

/** What is to be done with foam that runs past a bent edge, and what it is good for. */
export function wordPast({
  edgeName,
  lengthMm,
  ribId,
  withMm,
  withoutMm,
}: Pick<LiePast, "edgeName" | "lengthMm" | "ribId" | "withMm" | "withoutMm">): string {
  const [off, freeOff] = [withMm, withoutMm].map((mm) => formatMm(Math.abs(mm)));
  const over = ribId === undefined ? "" : ` over rib ${ribId}: hold it down there`;
  const gain =
    ribId === undefined
      ? ""
      : ` The end of the sheet then lies ${off} mm off its shape at most; if it ended at the edge, ${freeOff} mm.`;
  return `The foam runs ${formatMm(lengthMm)} mm past the ${edgeName}${over}.${gain} Trim it after the first skin.`;
}
