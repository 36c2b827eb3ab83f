import { formatMm, MINUS } from "../../core/foundation/index.ts";
import { formatInches, formatThousandths } from "./inches.ts";
import { readLengthMm, type Units } from "./read-typed.ts";

/** How this builder reads and types lengths. Everything that comes in or goes out here is in mm. */
export interface Lengths {
  readonly units: Units;
  /** What stands behind a number or at the head of a column. */
  readonly unit: "mm" | "in";
  /** The same for labels that are heard. */
  readonly spoken: "mm" | "inches";
  /** A length to bench accuracy without its unit: `128.4`, or `3 5/16`; `≈3 5/16` beside the sixteenth. */
  readonly show: (lengthMm: number) => string;
  /** The same for what is finer than a tape, such as the thickness of a metal: `0.25`, or `0.010`. */
  readonly showFine: (lengthMm: number) => string;
  /** What was typed, in mm; undefined where it is no length. */
  readonly read: (text: string) => number | undefined;
}

const MM: Lengths = {
  units: "mm",
  unit: "mm",
  spoken: "mm",
  show: (lengthMm) => (Number.isFinite(lengthMm) ? formatMm(lengthMm) : String(lengthMm)),
  showFine: showFineMm,
  read: (text) => readLengthMm(text, "mm"),
};

const INCHES: Lengths = {
  units: "inch",
  unit: "in",
  spoken: "inches",
  show: formatInches,
  showFine: formatThousandths,
  read: (text) => readLengthMm(text, "inch"),
};

/** Lengths in the units of a preference, where no component asks; components ask `useLengths` of the controls. */
export const lengthsIn = (units: Units): Lengths => (units === "inch" ? INCHES : MM);

/** One decimal, or two where the second says something. */
function showFineMm(lengthMm: number): string {
  if (!Number.isFinite(lengthMm)) return String(lengthMm);
  return lengthMm
    .toFixed(2)
    .replace(/(\.\d)0$/, "$1")
    .replace(/^-(?=0\.0$)/, "")
    .replace("-", MINUS);
}
