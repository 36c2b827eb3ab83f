import { bracketedRoot } from "./roots.ts";

/**
 * The real roots in [from, to], ascending, of c[0] + c[1] t + c[2] t² + …, of any degree. Between two turning points
 * (the roots of the derivative, found the same way) there is one root at most, and it is bracketed: none is lost. A
 * double root is found where a turning point lies on zero within rounding. A polynomial that is zero throughout has none.
 */
export function polynomialRootsWithin(c: readonly number[], from: number, to: number): readonly number[] {
  const size = c.reduce((sum, one) => sum + Math.abs(one), 0);
  if (size === 0 || c.length < 2) return [];
  const value = (t: number) => c.reduceRight((sum, one) => sum * t + one, 0);
  const slope = c.slice(1).map((one, index) => one * (index + 1));
  const stops = [from, ...polynomialRootsWithin(slope, from, to), to];
  const isZero = (t: number) => Math.abs(value(t)) <= ZERO_RELATIVE * size;
  const roots: number[] = stops.filter(isZero);
  stops.slice(1).forEach((high, index) => {
    const low = stops[index] ?? from;
    if (!isZero(low) && !isZero(high) && value(low) < 0 !== value(high) < 0)
      roots.push(bracketedRoot(value, low, high));
  });
  return roots.sort((a, b) => a - b).filter((t, index, all) => index === 0 || t > (all[index - 1] ?? t));
}

/** Rounding of a sum of a few terms, relative to their sizes. */
const ZERO_RELATIVE = 1e-14;
