import { readDecimal } from "./read-decimal.ts";

/** CSS Values 4 §6.2: an inch has 96 px, 72 pt and 6 pc. */
const MM_PER_INCH = 25.4;
export const MM_PER_PX = MM_PER_INCH / 96;
const MM_PER: Readonly<Record<string, number>> = {
  "": MM_PER_PX,
  px: MM_PER_PX,
  mm: 1,
  cm: 10,
  q: 0.25,
  in: MM_PER_INCH,
  pt: MM_PER_INCH / 72,
  pc: MM_PER_INCH / 6,
};

/** A length such as `210mm` in mm; undefined where it has a unit that depends on the page (`%`, `em`) or is none. */
export function svgLengthMm(text: string): number | undefined {
  const match = /^(.*?)\s*([a-z]*)$/i.exec(text.trim());
  const value = readDecimal(match?.[1] ?? "");
  const unitMm = MM_PER[(match?.[2] ?? "").toLowerCase()];
  return value === undefined || unitMm === undefined ? undefined : value * unitMm;
}

/** A coordinate of an element in user units: plain numbers as they are, lengths with a unit in px. */
export function userLength(text: string): number | undefined {
  const lengthMm = svgLengthMm(text);
  return lengthMm === undefined ? undefined : lengthMm / MM_PER_PX;
}
