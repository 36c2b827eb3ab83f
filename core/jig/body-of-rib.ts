import type { Stretch } from "./crossing-rib.ts";
import type { Rib } from "./types.ts";

/** Where a rib's board lies in plan: least and greatest x (across) or y (along). */
export function bodyOfRib({
  atMm,
  thicknessMm,
  stationFace,
}: Pick<Rib, "atMm" | "thicknessMm" | "stationFace">): Stretch {
  const goesUp = stationFace === "front" || stationFace === "left";
  return goesUp ? [atMm, atMm + thicknessMm] : [atMm - thicknessMm, atMm];
}
