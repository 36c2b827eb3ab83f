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
 * Nodes of the 15-point Kronrod rule on [0, 1] and its weights, with those of the 7-point Gauss rule that it extends
 * (0 where it has no node). Kronrod 1965; Piessens et al., QUADPACK, 1983, qk15; from memory.
 */
const KRONROD = [
  { node: 0.20778495500789848, weight: 0.20443294007529889, gaussWeight: 0 },
  { node: 0.4058451513773972, weight: 0.19035057806478542, gaussWeight: 0.3818300505051189 },
  { node: 0.5860872354676911, weight: 0.1690047266392679, gaussWeight: 0 },
  { node: 0.7415311855993945, weight: 0.14065325971552592, gaussWeight: 0.27970539148927664 },
  { node: 0.8648644233597691, weight: 0.10479001032225019, gaussWeight: 0 },
  { node: 0.9491079123427585, weight: 0.06309209262997856, gaussWeight: 0.1294849661688697 },
  { node: 0.9914553711208126, weight: 0.022935322010529224, gaussWeight: 0 },
] as const;
const KRONROD_MIDDLE = { weight: 0.20948214108472782, gaussWeight: 0.4179591836734694 } as const;

/** Halvings after which an integral is taken as it is. */
const MOST_HALVINGS = 12;

/**
 * The integral of f from a to b, halving until the 7-point Gauss rule agrees with the 15-point Kronrod rule to a
 * relative 1e-10 of `scale` (default: the integral of |f| as first estimated). Depth is limited, so it always ends.
 */
export function integrate(f: (t: number) => number, a: number, b: number, scale?: number): number {
  if (a === b) return 0;
  const whole = kronrod(f, a, b);
  const size = scale ?? Math.max(Math.abs(whole.integral), Number.MIN_VALUE);
  return refine(f, [a, b], whole, QUADRATURE_RELATIVE * size, MOST_HALVINGS);
}

interface Estimate {
  readonly integral: number;
  readonly error: number;
}

function refine(
  f: (t: number) => number,
  [a, b]: readonly [number, number],
  { integral, error }: Estimate,
  allowed: number,
  halvings: number,
): number {
  if (halvings === 0 || error <= allowed || !Number.isFinite(error)) return integral;
  const middle = (a + b) / 2;
  const half = (from: number, to: number) =>
    refine(f, [from, to], kronrod(f, from, to), allowed / 2, halvings - 1);
  return half(a, middle) + half(middle, b);
}

function kronrod(f: (t: number) => number, a: number, b: number): Estimate {
  const middle = (a + b) / 2;
  const half = (b - a) / 2;
  const atMiddle = f(middle);
  let sum = KRONROD_MIDDLE.weight * atMiddle;
  let gaussSum = KRONROD_MIDDLE.gaussWeight * atMiddle;
  for (const { node, weight, gaussWeight } of KRONROD) {
    const both = f(middle - half * node) + f(middle + half * node);
    sum += weight * both;
    gaussSum += gaussWeight * both;
  }
  return { integral: sum * half, error: Math.abs((sum - gaussSum) * half) };
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
