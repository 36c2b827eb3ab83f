/**
 * The root of f between a and b, where f(a) and f(b) differ in sign (a root at an end is returned as it is).
 * Bisection guarded secant (regula falsi, Illinois variant); ends when the bracket is at rounding noise.
 */
export function bracketedRoot(f: (t: number) => number, a: number, b: number): number {
  let low = a;
  let high = b;
  let fLow = f(low);
  let fHigh = f(high);
  if (fLow === 0) return low;
  if (fHigh === 0) return high;
  for (let i = 0; i < 200; i++) {
    const width = high - low;
    if (Math.abs(width) <= 4e-16 * Math.max(Math.abs(low), Math.abs(high))) break;
    const secant = high - (fHigh * width) / (fHigh - fLow);
    const inside = (secant - low) * (secant - high) < 0;
    const t = inside && i % 3 !== 2 ? secant : low + width / 2;
    const value = f(t);
    if (value === 0) return t;
    if (value < 0 === fHigh < 0) {
      high = t;
      fHigh = value;
    } else {
      low = t;
      fLow = value;
    }
  }
  return Math.abs(fLow) < Math.abs(fHigh) ? low : high;
}

/**
 * The real roots of c0 + c1 t + c2 t² + c3 t³ that lie in [from, to], ascending, double roots once.
 * Found between the turning points, so each is a bracketed root and none is lost to cancellation.
 */
export function cubicRootsWithin(
  c: readonly [number, number, number, number],
  from: number,
  to: number,
): number[] {
  const [c0, c1, c2, c3] = c;
  const f = (t: number) => c0 + t * (c1 + t * (c2 + t * c3));
  const turning = quadraticRoots(c1, 2 * c2, 3 * c3).filter((t) => t > from && t < to);
  const stops = [from, ...turning, to];
  const size = Math.abs(c0) + Math.abs(c1) + Math.abs(c2) + Math.abs(c3);
  const zero = 1e-14 * size;
  const roots: number[] = [];
  const keep = (t: number) => {
    if (roots.every((other) => Math.abs(other - t) > 1e-12 * (Math.abs(to - from) || 1))) roots.push(t);
  };
  for (let i = 0; i + 1 < stops.length; i++) {
    const a = stops[i] ?? from;
    const b = stops[i + 1] ?? to;
    const fa = f(a);
    const fb = f(b);
    if (Math.abs(fa) <= zero) keep(a);
    if (Math.abs(fa) > zero && Math.abs(fb) > zero && fa < 0 !== fb < 0) keep(bracketedRoot(f, a, b));
    if (Math.abs(fb) <= zero) keep(b);
  }
  return roots.sort((a, b) => a - b);
}

/** The real roots of c0 + c1 t + c2 t², ascending; the stable form that avoids subtracting near-equal numbers. */
export function quadraticRoots(c0: number, c1: number, c2: number): number[] {
  if (c2 === 0) return c1 === 0 ? [] : [-c0 / c1];
  const discriminant = c1 * c1 - 4 * c2 * c0;
  if (discriminant < 0) return [];
  const q = -(c1 + (c1 < 0 ? -1 : 1) * Math.sqrt(discriminant)) / 2;
  const roots = q === 0 ? [0] : [q / c2, c0 / q];
  return roots.sort((a, b) => a - b);
}
