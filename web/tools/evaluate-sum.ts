/**
 * The value of what somebody typed into a number field: a number or a sum with + − * / and brackets, a comma or
 * a point for decimals, and any minus sign. Undefined when it is neither, so that the field can say so.
 */
export function evaluateSum(text: string): number | undefined {
  const tokens = tokensOf(text);
  if (tokens === undefined || tokens.length === 0) return undefined;
  const sum = readSum(tokens, 0);
  if (sum === undefined || sum.end !== tokens.length || !Number.isFinite(sum.value)) return undefined;
  return sum.value;
}

type Token = number | "+" | "-" | "*" | "/" | "(" | ")";
type Read = { readonly value: number; readonly end: number } | undefined;

const SIGNS: Readonly<Record<string, Token>> = {
  "+": "+",
  "-": "-",
  "−": "-",
  "–": "-",
  "*": "*",
  "×": "*",
  "/": "/",
  "÷": "/",
  "(": "(",
  ")": ")",
};

function tokensOf(text: string): readonly Token[] | undefined {
  const tokens: Token[] = [];
  const pattern = /\s*(?:(\d+(?:[.,]\d*)?|[.,]\d+)|([-+−–*×/÷()]))/y;
  const trimmed = text.replace(/\s*(mm|°)?\s*$/, "");
  while (pattern.lastIndex < trimmed.length) {
    const match = pattern.exec(trimmed);
    if (match === null) return undefined;
    const sign = SIGNS[match[2] ?? ""];
    tokens.push(sign ?? Number((match[1] ?? "").replace(",", ".")));
  }
  return tokens;
}

function readSum(tokens: readonly Token[], start: number): Read {
  let left = readProduct(tokens, start);
  while (left !== undefined && (tokens[left.end] === "+" || tokens[left.end] === "-")) {
    const factor = tokens[left.end] === "+" ? 1 : -1;
    const right = readProduct(tokens, left.end + 1);
    left = right && { value: left.value + factor * right.value, end: right.end };
  }
  return left;
}

function readProduct(tokens: readonly Token[], start: number): Read {
  let left = readSigned(tokens, start);
  while (left !== undefined && (tokens[left.end] === "*" || tokens[left.end] === "/")) {
    const divides = tokens[left.end] === "/";
    const right = readSigned(tokens, left.end + 1);
    left = right && { value: divides ? left.value / right.value : left.value * right.value, end: right.end };
  }
  return left;
}

function readSigned(tokens: readonly Token[], start: number): Read {
  const token = tokens[start];
  if (typeof token === "number") return { value: token, end: start + 1 };
  if (token === "-" || token === "+") {
    const rest = readSigned(tokens, start + 1);
    return rest && { value: token === "-" ? -rest.value : rest.value, end: rest.end };
  }
  if (token !== "(") return undefined;
  const inner = readSum(tokens, start + 1);
  return inner !== undefined && tokens[inner.end] === ")"
    ? { value: inner.value, end: inner.end + 1 }
    : undefined;
}
