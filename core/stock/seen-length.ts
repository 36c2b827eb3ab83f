import type { LaidStockSheet } from "./types.ts";

/** Beyond the last piece on a roll so much is shown, mm. */
const BEYOND_MM = 200;

/** How much of a sheet's length a picture shows: all of it, but of a long roll no more than what is taken from it. */
export const seenLengthMm = ({ lengthMm, widthMm, usedMm }: LaidStockSheet): number =>
  Math.min(lengthMm, Math.max(usedMm + BEYOND_MM, 4 * widthMm));
