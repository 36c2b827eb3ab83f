export type Sign = "+" | "-" | "*" | "/" | "(" | ")";
export type Unit = "mm" | "cm" | "m" | "in";

/** One sign, number or unit of a typed sum. */
export type Token =
  | { readonly kind: "number"; readonly value: number }
  | { readonly kind: "sign"; readonly sign: Sign }
  | { readonly kind: "unit"; readonly unit: Unit };

const SIGNS: Readonly<Record<string, Sign>> = {
  "+": "+",
  "-": "-",
  "−": "-",
  "–": "-",
  "*": "*",
  "×": "*",
  "·": "*",
  "/": "/",
  "÷": "/",
  "⁄": "/",
  ":": "/",
  "(": "(",
  ")": ")",
};

const UNITS: Readonly<Record<string, Unit>> = { mm: "mm", cm: "cm", m: "m", in: "in", '"': "in", "″": "in" };

/** The fractions that have a sign of their own. */
const FRACTION_SIGNS: Readonly<Record<string, string>> = {
  "½": "1/2",
  "¼": "1/4",
  "¾": "3/4",
  "⅛": "1/8",
  "⅜": "3/8",
  "⅝": "5/8",
  "⅞": "7/8",
};

/** A mixed number (`3 5/16`), a number with spaces between its thousands, a plain number, a sign, a unit. */
const MIXED = String.raw`(?<whole>\d+)\s+(?<above>\d+)\s*[/⁄]\s*(?<below>\d+)(?![\d.,])`;
const GROUPED = String.raw`(?<grouped>\d{1,3}(?:\s\d{3})+(?:[.,]\d+)?)(?!\d)`;
const PLAIN = String.raw`(?<plain>(?:\d+(?:[.,]\d*)?|[.,]\d+)(?:e[+-]?\d+)?)`;
const SIGN = "(?<sign>[-+−–*×·/÷⁄:()])";
const UNIT = String.raw`(?<unit>mm\b|cm\b|m\b|in\b|["″])`;
const startsWith = (pattern: string): RegExp => new RegExp(String.raw`^\s*(?:${pattern})\s*`, "i");
const STARTS_MIXED = startsWith(MIXED);
const STARTS_OTHERS = startsWith(`${GROUPED}|${PLAIN}|${SIGN}|${UNIT}`);

/**
 * What somebody typed, word by word; a comma or a point for decimals, any minus sign, and the mark `≈` of a shown
 * value before it. Undefined where something in it is no part of a sum, or where there is nothing.
 */
export function tokensOf(text: string): readonly Token[] | undefined {
  const plain = text
    .trim()
    .replace(/^≈\s*/, "")
    .replaceAll(/[½¼¾⅛⅜⅝⅞]/g, (sign) => ` ${FRACTION_SIGNS[sign] ?? ""}`);
  const tokens: Token[] = [];
  let rest = plain;
  while (rest !== "") {
    const match = firstWord(rest);
    const token = match && tokenOf(match.groups ?? {});
    if (!match || !token) return undefined;
    tokens.push(token);
    rest = rest.slice(match[0].length);
  }
  return tokens.length > 0 ? tokens : undefined;
}

/** The first word; only a proper fraction makes a mixed number, so that `1 200/2` is a sum. */
function firstWord(text: string): RegExpExecArray | null {
  const mixed = STARTS_MIXED.exec(text);
  const { above, below } = mixed?.groups ?? {};
  return mixed && Number(above) < Number(below) ? mixed : STARTS_OTHERS.exec(text);
}

function tokenOf(groups: Readonly<Record<string, string | undefined>>): Token | undefined {
  const sign = SIGNS[groups.sign ?? ""];
  if (sign) return { kind: "sign", sign };
  const unit = UNITS[groups.unit?.toLowerCase() ?? ""];
  if (unit) return { kind: "unit", unit };
  if (groups.whole !== undefined) {
    return { kind: "number", value: Number(groups.whole) + Number(groups.above) / Number(groups.below) };
  }
  const digits = groups.plain ?? groups.grouped?.replaceAll(/\s/g, "");
  return digits === undefined ? undefined : { kind: "number", value: Number(digits.replace(",", ".")) };
}
