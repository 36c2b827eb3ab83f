const DECIMAL = /^[-+]?(?:\d+(?:[.,]\d*)?|[.,]\d+)(?:e[-+]?\d+)?$/i;

/**
 * A number as tables and drawings write it: a point or a comma for decimals, any minus sign, an exponent.
 * Undefined where the text is none: `NaN`, `1.234,5` and `12 mm` are none.
 */
export function readDecimal(text: string): number | undefined {
  const plain = text.trim().replace(/^[\u2212\u2013]/, "-");
  if (!DECIMAL.test(plain)) return undefined;
  const value = Number(plain.replace(",", "."));
  return Number.isFinite(value) ? value : undefined;
}
