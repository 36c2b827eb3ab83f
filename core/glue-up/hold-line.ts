import type { Gluing } from "../project/index.ts";

/** How one line of glue is held: how many pins or weights, and how far apart they stand between its ends. */
export interface LineHold {
  readonly pins: number;
  readonly spacingMm: number;
}

/**
 * Pins stand on both sides of a line, close at its ends and wherever it is curved or bends, else as far apart as is typed;
 * weights lie over the line likewise. Spacings are common practice: 100 mm, 50 mm on curves and at ends. The spacing that is
 * told is that of the longer share.
 */
export function holdLine(
  { lengthMm, curvedMm }: { readonly lengthMm: number; readonly curvedMm: number },
  { heldBy, pinSpacingMm, pinSpacingCurvedMm }: Gluing,
): LineHold {
  const spacingMm = curvedMm > lengthMm / 2 ? pinSpacingCurvedMm : pinSpacingMm;
  if (!(spacingMm > 0 && pinSpacingCurvedMm > 0)) return { pins: 0, spacingMm };
  const closeMm = Math.min(pinSpacingMm, pinSpacingCurvedMm);
  const endsMm = heldBy === "weights" ? 0 : 2 * closeMm;
  const closeLengthMm = Math.min(lengthMm, curvedMm + endsMm);
  const rows = heldBy === "weights" ? 1 : 2;
  const gaps = spaces(closeLengthMm, closeMm) + spaces(lengthMm - closeLengthMm, pinSpacingMm);
  return { pins: rows * (gaps + 1), spacingMm };
}

/** A hair over a whole number is rounding. */
const spaces = (lengthMm: number, spacingMm: number): number => Math.ceil(lengthMm / spacingMm - 1e-9);
