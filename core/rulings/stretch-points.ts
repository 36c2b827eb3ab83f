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

/** The integral over [0, 1] of a function by its values at STRETCH_POINTS. */
export function integralOf(values: readonly number[]): number {
  let sum = 0;
  for (let i = 0; i < STRETCH_WEIGHTS.length; i++) sum += (STRETCH_WEIGHTS[i] ?? 0) * (values[i] ?? 0);
  return sum;
}

/**
 * The integral from 0 of the polynomial through values at STRETCH_POINTS, as coefficients of x, x², … x⁵ (there is no
 * constant).
 */
export function integralPolynomial(values: readonly number[]): readonly number[] {
  return ANTIDERIVATIVES.map((row) => {
    let sum = 0;
    for (let i = 0; i < row.length; i++) sum += (row[i] ?? 0) * (values[i] ?? 0);
    return sum;
  });
}

/** The value at x of a polynomial without a constant. */
export function valueAt(coefficients: readonly number[], x: number): number {
  let value = 0;
  for (let k = coefficients.length - 1; k >= 0; k--) value = (value + (coefficients[k] ?? 0)) * x;
  return value;
}

/** Row k: what each value adds to the coefficient of x^(k+1) of the integral. */
const ANTIDERIVATIVES: readonly (readonly number[])[] = antiderivatives();

function antiderivatives(): readonly (readonly number[])[] {
  const lagrange = STRETCH_POINTS.map((node) => {
    let poly: readonly number[] = [1];
    for (const other of STRETCH_POINTS) {
      if (other === node) continue;
      const before = poly;
      poly = [...before, 0].map((c, k) => (-other * c + (before[k - 1] ?? 0)) / (node - other));
    }
    return poly;
  });
  return STRETCH_POINTS.map((_, k) => lagrange.map((poly) => (poly[k] ?? 0) / (k + 1)));
}
