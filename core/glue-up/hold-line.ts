import type { Gluing } from "../project/index.ts";

/** How one line of glue is held: how many pins or weights, and how far apart they stand between its ends. */
export interface LineHold {
  readonly pins: number;
  readonly spacingMm: number;
}

/**
 * Pins stand on both sides of a line, at its ends and next to these as close as on a curve, between them as far apart as
 * is typed; weights lie over the line, as far apart all along. Spacings are common practice: 100 mm, 50 mm on curves and at ends.
 */
export function holdLine(
  { lengthMm, isCurved }: { readonly lengthMm: number; readonly isCurved: boolean },
  { heldBy, pinSpacingMm, pinSpacingCurvedMm }: Gluing,
): LineHold {
  const spacingMm = isCurved ? pinSpacingCurvedMm : pinSpacingMm;
  if (!(spacingMm > 0 && pinSpacingCurvedMm > 0)) return { pins: 0, spacingMm };
  if (heldBy === "weights") return { pins: spaces(lengthMm, spacingMm) + 1, spacingMm };
  const endMm = Math.min(spacingMm, pinSpacingCurvedMm);
  const betweenMm = lengthMm - 2 * endMm;
  const gaps = betweenMm > 0 ? 2 + spaces(betweenMm, spacingMm) : spaces(lengthMm, endMm);
  return { pins: 2 * (gaps + 1), spacingMm };
}

/** A hair over a whole number is rounding. */
const spaces = (lengthMm: number, spacingMm: number): number => Math.ceil(lengthMm / spacingMm - 1e-9);
