import { QUADRATURE_RELATIVE } from "./tolerances.ts";

/** Gauss-Legendre nodes and weights on [-1, 1], 10 points (Abramowitz & Stegun, table 25.4; from memory). */
const NODES = [
  0.1488743389816312, 0.4333953941292472, 0.6794095682990244, 0.8650633666889845, 0.9739065285171717,
];
const WEIGHTS = [
  0.29552422471475287, 0.26926671930999635, 0.21908636251598204, 0.1494513491505806, 0.06667134430868814,
];

/** The integral of a smooth function from a to b by one ten-point Gauss rule. */
export function gauss(f: (t: number) => number, a: number, b: number): number {
  const middle = (a + b) / 2;
  const half = (b - a) / 2;
  let sum = 0;
  for (let i = 0; i < NODES.length; i++) {
    const offset = half * (NODES[i] ?? 0);
    sum += (WEIGHTS[i] ?? 0) * (f(middle - offset) + f(middle + offset));
  }
  return sum * half;
}

/** The integral of a smooth function over a short stretch by the three-point Gauss rule. */
export function gaussShort(f: (t: number) => number, a: number, b: number): number {
  const middle = (a + b) / 2;
  const half = (b - a) / 2;
  const offset = half * 0.7745966692414834;
  return (half * (5 * f(middle - offset) + 8 * f(middle) + 5 * f(middle + offset))) / 9;
}

/**
 * The integral of f from a to b, halving until two halves agree with the whole to a relative 1e-11 of
 * `scale` (default: the integral of |f| as first estimated). Depth is limited, so it always ends.
 */
export function integrate(f: (t: number) => number, a: number, b: number, scale?: number): number {
  if (a === b) return 0;
  const whole = gauss(f, a, b);
  const allowed = QUADRATURE_RELATIVE * (scale ?? Math.max(Math.abs(whole), Number.MIN_VALUE));
  return refine(f, a, b, whole, allowed, 12);
}

function refine(
  f: (t: number) => number,
  a: number,
  b: number,
  whole: number,
  allowed: number,
  depth: number,
): number {
  const middle = (a + b) / 2;
  const left = gauss(f, a, middle);
  const right = gauss(f, middle, b);
  const error = Math.abs(left + right - whole);
  if (depth === 0 || error <= allowed || !Number.isFinite(error)) return left + right;
  return (
    refine(f, a, middle, left, allowed / 2, depth - 1) + refine(f, middle, b, right, allowed / 2, depth - 1)
  );
}

/**
 * The integral of f from a to b where f may grow like 1/√distance at either end (an edge that starts on a
 * vertical tangent): the cubic substitution t = a + (b - a)(3w² - 2w³) makes such ends smooth.
 */
export function integrateWithOpenEnds(
  f: (t: number) => number,
  a: number,
  b: number,
  scale?: number,
): number {
  const span = b - a;
  return integrate((w) => f(a + span * w * w * (3 - 2 * w)) * span * 6 * w * (1 - w), 0, 1, scale);
}

/**
 * The integral of f from 0 to i / n, for i = 0 … n, by one rule a step: the steps are halved until they agree with
 * their halves to a relative 1e-10, up to `mostSteps`. From here the integral up to any t is one short quadrature
 * by the same rule away.
 */
export function cumulate(
  f: (t: number) => number,
  { rule, mostSteps }: { readonly rule: typeof gauss; readonly mostSteps: number } = {
    rule: gauss,
    mostSteps: 64,
  },
): readonly number[] {
  for (let steps = 1; ; steps *= 2) {
    const table = [0];
    let whole = 0;
    let halves = 0;
    for (let i = 0; i < steps; i++) {
      const [a, b] = [i / steps, (i + 1) / steps];
      whole += rule(f, a, b);
      table.push(whole);
      halves += rule(f, a, (a + b) / 2) + rule(f, (a + b) / 2, b);
    }
    if (Math.abs(halves - whole) <= QUADRATURE_RELATIVE * Math.abs(halves) || steps >= mostSteps)
      return table;
  }
}
