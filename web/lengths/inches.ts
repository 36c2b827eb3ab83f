import { MINUS, roundTo } from "../../core/foundation/index.ts";

/** The international inch, exact by definition (1959). */
const MM_PER_INCH = 25.4;
/** The finest fraction that a tape shows. */
const PARTS_PER_INCH = 16;
/** A length this near to a sixteenth is on it: a hundredth of what a knife can follow. */
const ON_A_SIXTEENTH_MM = 0.001;
/** So many decimals of a mm are kept of a converted length: `3 5/16` typed is the very number that `84.1375` is. */
const KEPT_DECIMALS = 9;

export const toInches = (lengthMm: number): number => lengthMm / MM_PER_INCH;

/** Inches in mm, free of the noise of the multiplication. */
export const fromInches = (lengthIn: number): number => roundTo(lengthIn * MM_PER_INCH, KEPT_DECIMALS);

/**
 * A length in mm as inches to the nearest sixteenth, with no unit: `3 5/16`, `−5/16`, `0`. One that lies beside
 * the sixteenth is marked as near to it: `≈3 5/16`.
 */
export function formatInches(lengthMm: number): string {
  if (!Number.isFinite(lengthMm)) return String(lengthMm);
  const sixteenths = Math.round(toInches(Math.abs(lengthMm)) * PARTS_PER_INCH);
  const missMm = Math.abs(fromInches(sixteenths / PARTS_PER_INCH) - Math.abs(lengthMm));
  const sign = lengthMm < 0 && sixteenths > 0 ? MINUS : "";
  return `${missMm > ON_A_SIXTEENTH_MM ? "≈" : ""}${sign}${wordSixteenths(sixteenths)}`;
}

/** A length in mm as decimal inches to the thousandth, for what is finer than a tape: thickness, radius of a bend. */
export const formatThousandths = (lengthMm: number): string =>
  Number.isFinite(lengthMm) ? toInches(lengthMm).toFixed(3).replace("-", MINUS) : String(lengthMm);

function wordSixteenths(sixteenths: number): string {
  const whole = Math.floor(sixteenths / PARTS_PER_INCH);
  let above = sixteenths % PARTS_PER_INCH;
  let below = PARTS_PER_INCH;
  while (above > 0 && above % 2 === 0) {
    above /= 2;
    below /= 2;
  }
  if (above === 0) return String(whole);
  return whole === 0 ? `${above}/${below}` : `${whole} ${above}/${below}`;
}
