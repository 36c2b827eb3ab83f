/** Chebyshev points of the first kind on [-1, 1], ascending. */
export const chebyshevNodes = (count: number): readonly number[] => tableOf(count).nodes;

/** Coefficients of the Chebyshev series through values at `chebyshevNodes`. */
export function chebyshevFit(values: readonly number[]): number[] {
  const n = values.length;
  const { cosines } = tableOf(n);
  return values.map((_, k) => {
    let sum = 0;
    for (let j = 0; j < n; j++) sum += (values[j] ?? 0) * (cosines[k * n + j] ?? 0);
    return (sum * (k === 0 ? 1 : 2)) / n;
  });
}

/** The value of a Chebyshev series at x in [-1, 1] (Clenshaw 1955). */
export function chebyshevValue(c: readonly number[], x: number): number {
  let [b1, b2] = [0, 0];
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
  const of = (k: number) => c[k] ?? 0;
  const out = [0];
  let atStart = 0;
  for (let k = 1; k <= c.length; k++) {
    const value = ((k === 1 ? 2 * of(0) : of(k - 1)) - of(k + 1)) / (2 * k);
    out.push(value);
    atStart += k % 2 === 0 ? value : -value;
  }
  out[0] = -atStart;
  return out;
}

/** A series as coefficients of the powers of x, lowest first. */
export function toPowers(c: readonly number[]): readonly number[] {
  const { powers } = tableOf(c.length);
  return c.map((_, power) => {
    let sum = 0;
    for (let k = power; k < c.length; k++) sum += (c[k] ?? 0) * (powers[k * c.length + power] ?? 0);
    return sum;
  });
}

interface ChebyshevTable {
  readonly nodes: readonly number[];
  /** T_k at node j, row by row. */
  readonly cosines: readonly number[];
  /** The coefficient of x^j in T_k, row by row. */
  readonly powers: readonly number[];
}

const tableOf = (count: number): ChebyshevTable => KNOWN.get(count) ?? makeTable(count);

function makeTable(count: number): ChebyshevTable {
  const angles = Array.from({ length: count }, (_, j) => (Math.PI * (count - j - 0.5)) / count);
  const rows: number[][] = [];
  for (let k = 0; k < count; k++) {
    const [one, two] = [rows[k - 1], rows[k - 2]];
    rows.push(
      Array.from({ length: count }, (_, j) => {
        if (one === undefined) return j === 0 ? 1 : 0;
        if (two === undefined) return j === 1 ? 1 : 0;
        return 2 * (one[j - 1] ?? 0) - (two[j] ?? 0);
      }),
    );
  }
  return {
    nodes: angles.map(Math.cos),
    cosines: Array.from({ length: count }, (_, k) => angles.map((angle) => Math.cos(k * angle))).flat(),
    powers: rows.flat(),
  };
}

/** Tables of the counts that spans use, made once. */
const KNOWN: ReadonlyMap<number, ChebyshevTable> = new Map([9, 13].map((count) => [count, makeTable(count)]));
