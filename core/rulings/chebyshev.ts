/** What series of one number of terms need; made once for the numbers that spans use. */
export interface ChebyshevTable {
  readonly count: number;
  /** Chebyshev points of the first kind on [-1, 1], ascending. */
  readonly nodes: Float64Array;
  /** T_k at node j, row by row, weighted so that a row times values is a coefficient. */
  readonly fit: Float64Array;
  /** The coefficient of x^j in T_k, row by row. */
  readonly powers: Float64Array;
}

export function chebyshevTable(count: number): ChebyshevTable {
  const nodes = new Float64Array(count);
  const fit = new Float64Array(count * count);
  const powers = new Float64Array(count * count);
  for (let j = 0; j < count; j++) {
    const angle = (Math.PI * (count - j - 0.5)) / count;
    nodes[j] = Math.cos(angle);
    for (let k = 0; k < count; k++) fit[k * count + j] = (Math.cos(k * angle) * (k === 0 ? 1 : 2)) / count;
  }
  const power = (k: number, j: number) => (j < 0 ? 0 : (powers[k * count + j] ?? 0));
  for (let k = 0; k < count; k++)
    for (let j = 0; j <= k; j++)
      powers[k * count + j] = k === j && k < 2 ? 1 : k < 2 ? 0 : 2 * power(k - 1, j - 1) - power(k - 2, j);
  return { count, nodes, fit, powers };
}

/** Coefficients of the series through values at the table's nodes. */
export function chebyshevFit({ count, fit }: ChebyshevTable, values: readonly number[]): readonly number[] {
  const out: number[] = [];
  for (let k = 0; k < count; k++) {
    let sum = 0;
    for (let j = 0; j < count; j++) sum += (values[j] ?? 0) * (fit[k * count + j] ?? 0);
    out.push(sum);
  }
  return out;
}

/** The value of a series at x in [-1, 1] (Clenshaw 1955). */
export function chebyshevValue(c: readonly number[], x: number): number {
  let b1 = 0;
  let b2 = 0;
  for (let k = c.length - 1; k > 0; k--) {
    const b0 = (c[k] ?? 0) + 2 * x * b1 - b2;
    b2 = b1;
    b1 = b0;
  }
  return (c[0] ?? 0) + x * b1 - b2;
}

/** The size of the last two coefficients: what the series has not yet settled. */
export const chebyshevTail = (c: readonly number[]): number =>
  Math.abs(c[c.length - 1] ?? 0) + Math.abs(c[c.length - 2] ?? 0);

/** The series of the integral from -1 of a series. */
export function integrateChebyshev(c: readonly number[]): readonly number[] {
  const out = [0];
  let atStart = 0;
  for (let k = 1; k <= c.length; k++) {
    const value = ((k === 1 ? 2 : 1) * (c[k - 1] ?? 0) - (c[k + 1] ?? 0)) / (2 * k);
    out.push(value);
    atStart += k % 2 === 0 ? value : -value;
  }
  out[0] = -atStart;
  return out;
}

/** Appends a series as coefficients of the powers of x, lowest first. */
export function appendPowers({ count, powers }: ChebyshevTable, c: readonly number[], out: number[]): void {
  for (let power = 0; power < count; power++) {
    let sum = 0;
    for (let k = power; k < count; k++) sum += (c[k] ?? 0) * (powers[k * count + power] ?? 0);
    out.push(sum);
  }
}
