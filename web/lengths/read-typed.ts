import { roundTo } from "../../core/foundation/index.ts";
import { fromInches } from "./inches.ts";
import { type Sign, type Token, tokensOf, type Unit } from "./typed-tokens.ts";

/** In what lengths are typed and shown on this device; the document is always in mm. */
export type Units = "mm" | "inch";

/**
 * A typed length in mm: a number or a sum with + − * / and brackets, mixed numbers such as `3 5/16` among them.
 * What has no unit is in the builder's own. One unit at the very end holds for the whole (`1250/2-18 in`), units
 * elsewhere for the number or bracket before them (`3 5/16 in + 20 mm`). Undefined where it is no length.
 */
export function readLengthMm(text: string, units: Units): number | undefined {
  const tokens = tokensOf(text);
  if (tokens === undefined) return undefined;
  const last = tokens.at(-1);
  const isForAll = last?.kind === "unit" && tokens.filter(({ kind }) => kind === "unit").length === 1;
  const bareUnit = isForAll ? last.unit : units === "inch" ? "in" : "mm";
  const sum = evaluate(isForAll ? tokens.slice(0, -1) : tokens, bareUnit);
  return sum && (sum.isLength ? sum.value : toMm(sum.value, bareUnit));
}

/**
 * A typed number without units, or a sum of such: a ratio, a count, an angle in degrees (with or without its sign).
 * Undefined where it is none.
 */
export function readNumber(text: string): number | undefined {
  const tokens = tokensOf(text.trim().replace(/\s*[°%]$/, ""));
  return tokens && evaluate(tokens, undefined)?.value;
}

/** A value with what it stands for: a length in mm, or a bare number. */
interface Quantity {
  readonly value: number;
  readonly isLength: boolean;
}
type Read = (Quantity & { readonly end: number }) | undefined;

/** What a sum comes to; units are refused where `bareUnit` is absent. */
function evaluate(tokens: readonly Token[], bareUnit: Unit | undefined): Quantity | undefined {
  if (bareUnit === undefined && tokens.some(({ kind }) => kind === "unit")) return undefined;
  const sum = readSum(tokens, 0, bareUnit ?? "mm");
  return sum !== undefined && sum.end === tokens.length && Number.isFinite(sum.value) ? sum : undefined;
}

function readSum(tokens: readonly Token[], start: number, bareUnit: Unit): Read {
  let left = readProduct(tokens, start, bareUnit);
  while (left !== undefined && isSign(tokens[left.end], ["+", "-"])) {
    const factor = isSign(tokens[left.end], ["+"]) ? 1 : -1;
    const right = readProduct(tokens, left.end + 1, bareUnit);
    left = right && { ...added(left, right, { factor, bareUnit }), end: right.end };
  }
  return left;
}

/** A bare number that stands beside a length is one in the builder's own unit. */
function added(
  left: Quantity,
  right: Quantity,
  { factor, bareUnit }: { readonly factor: 1 | -1; readonly bareUnit: Unit },
): Quantity {
  const isLength = left.isLength || right.isLength;
  const termOf = (quantity: Quantity) =>
    isLength && !quantity.isLength ? toMm(quantity.value, bareUnit) : quantity.value;
  return { value: termOf(left) + factor * termOf(right), isLength };
}

function readProduct(tokens: readonly Token[], start: number, bareUnit: Unit): Read {
  let left = readSigned(tokens, start, bareUnit);
  while (left !== undefined && isSign(tokens[left.end], ["*", "/"])) {
    const divides = isSign(tokens[left.end], ["/"]);
    const right = readSigned(tokens, left.end + 1, bareUnit);
    const product = right && (divides ? divided(left, right) : multiplied(left, right));
    left = right && product && { ...product, end: right.end };
  }
  return left;
}

/** Two lengths multiplied are an area, which no field asks for. */
const multiplied = (left: Quantity, right: Quantity): Quantity | undefined =>
  left.isLength && right.isLength
    ? undefined
    : { value: left.value * right.value, isLength: left.isLength || right.isLength };

const divided = (left: Quantity, right: Quantity): Quantity | undefined =>
  right.isLength && !left.isLength
    ? undefined
    : { value: left.value / right.value, isLength: left.isLength && !right.isLength };

function readSigned(tokens: readonly Token[], start: number, bareUnit: Unit): Read {
  const token = tokens[start];
  if (isSign(token, ["-", "+"])) {
    const rest = readSigned(tokens, start + 1, bareUnit);
    return rest && { ...rest, value: isSign(token, ["-"]) ? -rest.value : rest.value };
  }
  return withUnit(readOne(tokens, start, bareUnit), tokens);
}

function readOne(tokens: readonly Token[], start: number, bareUnit: Unit): Read {
  const token = tokens[start];
  if (token?.kind === "number") return { value: token.value, isLength: false, end: start + 1 };
  if (!isSign(token, ["("])) return undefined;
  const inner = readSum(tokens, start + 1, bareUnit);
  return inner && isSign(tokens[inner.end], [")"]) ? { ...inner, end: inner.end + 1 } : undefined;
}

function withUnit(read: Read, tokens: readonly Token[]): Read {
  const token = read && tokens[read.end];
  if (read === undefined || token?.kind !== "unit") return read;
  if (read.isLength) return undefined;
  return { value: toMm(read.value, token.unit), isLength: true, end: read.end + 1 };
}

const isSign = (token: Token | undefined, signs: readonly Sign[]): boolean =>
  token?.kind === "sign" && signs.includes(token.sign);

/** The decimals of a mm that are kept of a converted length. */
const KEPT_DECIMALS = 9;

function toMm(value: number, unit: Unit): number {
  switch (unit) {
    case "mm":
      return value;
    case "cm":
      return roundTo(value * 10, KEPT_DECIMALS);
    case "m":
      return roundTo(value * 1000, KEPT_DECIMALS);
    case "in":
      return fromInches(value);
  }
}
