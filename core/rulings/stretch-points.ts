/**
 * Gauss-Legendre points and weights on [0, 1], 5 points (Abramowitz & Stegun, table 25.4; from memory): a stretch of a
 * sheet between two stops is smooth, and this is exact for powers up to 9.
 */
export const STRETCH_POINTS: readonly number[] = [
  0.04691007703066802, 0.23076534494715845, 0.5, 0.7692346550528415, 0.9530899229693319,
];
export const STRETCH_WEIGHTS: readonly number[] = [
  0.11846344252809454, 0.23931433524968324, 0.28444444444444444, 0.23931433524968324, 0.11846344252809454,
];
/** How many, and so how many coefficients an integral has. */
export const STRETCH_COUNT = 5;

/**
 * Writes the integral from 0 of the polynomial through values at STRETCH_POINTS, as coefficients of x, x², … x⁵ (there
 * is no constant), from `o` on.
 */
export function writeIntegral(values: Float64Array, out: Float64Array, o: number): void {
  for (let power = 0; power < STRETCH_COUNT; power++) {
    let sum = 0;
    for (let i = 0; i < STRETCH_COUNT; i++)
      sum += (values[i] ?? 0) * (ANTIDERIVATIVES[power * STRETCH_COUNT + i] ?? 0);
    out[o + power] = sum;
  }
}

/** The value at x of such an integral. */
export function integralAt(coefficients: Float64Array, o: number, x: number): number {
  let value = 0;
  for (let k = o + STRETCH_COUNT - 1; k >= o; k--) value = (value + (coefficients[k] ?? 0)) * x;
  return value;
}

/** Row by power: what each value adds to the coefficient of x^(power + 1) of the integral. */
const ANTIDERIVATIVES: Float64Array = antiderivatives();

function antiderivatives(): Float64Array {
  const lagrange = STRETCH_POINTS.map((node) => {
    let poly: readonly number[] = [1];
    for (const other of STRETCH_POINTS) {
      if (other === node) continue;
      const before = poly;
      poly = [...before, 0].map((c, k) => (-other * c + (before[k - 1] ?? 0)) / (node - other));
    }
    return poly;
  });
  return Float64Array.from(
    STRETCH_POINTS.flatMap((_, k) => lagrange.map((poly) => (poly[k] ?? 0) / (k + 1))),
  );
}
