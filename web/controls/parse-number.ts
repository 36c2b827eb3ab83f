/**
 * A number as people type it: point or comma for decimals, a true minus sign, spaces between digits, fractions
 * such as `1 3/8`. Undefined where the text is no number.
 */
export function parseNumber(text: string): number | undefined {
  const plain = text.trim().replaceAll("\u2212", "-").replace(",", ".");
  const fraction = /^(-?)(?:(\d+)\s+)?(\d+)\s*\/\s*(\d+)$/.exec(plain);
  if (fraction) return fractionValue(fraction);
  const joined = plain.replaceAll(/\s/g, "");
  return /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(joined) ? Number(joined) : undefined;
}

/** A length in mm as people type it: a number of mm, or of inches where `in` or `"` stands behind it. */
export function parseLengthMm(text: string): number | undefined {
  const inches = /^(.*?)\s*(?:in|")$/i.exec(text.trim());
  if (inches) {
    const value = parseNumber(inches[1] ?? "");
    return value === undefined ? undefined : value * MM_PER_INCH;
  }
  return parseNumber(text.trim().replace(/\s*mm$/i, ""));
}

const MM_PER_INCH = 25.4;

function fractionValue(match: RegExpExecArray): number | undefined {
  const [, sign, whole = "0", above = "0", below = "1"] = match;
  if (Number(below) === 0) return undefined;
  const value = Number(whole) + Number(above) / Number(below);
  return sign === "-" ? -value : value;
}
