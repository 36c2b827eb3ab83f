import { describe, expect, it } from "vitest";
import {
  aircraftAllowance,
  allowanceOfDeductionMm,
  bendAllowanceMm,
  bendDeductionMm,
  dinCompensationMm,
  dinFactor,
  kFactorOfAllowance,
  kFactorOfRightAngle,
  type MetalBend,
  setBackMm,
} from "../../core/plates/index.ts";

/** Closed forms: noise of doubles only. */
const EXACT_DIGITS = 10;
const RADIANS_PER_DEGREE = Math.PI / 180;
const bend = (insideRadiusMm: number, thicknessMm: number, angleDegrees: number): MetalBend => ({
  insideRadiusMm,
  thicknessMm,
  angleRad: angleDegrees * RADIANS_PER_DEGREE,
});

// CLOSED FORM (beam theory): lengths of the faces and the middle of an arc, (R + c) θ.
const SANDWICH_ARCS = [
  {
    id: "O3",
    of: bend(500, 20, 60),
    inner: 523.5987755982989,
    middle: 534.070751110265,
    outer: 544.5427266222308,
    strain: 0.0196078431372549,
    difference: 10.471975511966,
  },
  {
    id: "O4",
    of: bend(300, 20, 90),
    inner: 471.238898038469,
    middle: 486.946861306418,
    outer: 502.6548245743669,
    strain: 0.03225806451612903,
    difference: 15.707963267949,
  },
];

describe("an arc of a thick sheet", () => {
  it.each(SANDWICH_ARCS)("$id: has its faces at (R + c) θ", ({ of, inner, middle, outer, strain }) => {
    expect(bendAllowanceMm(of, 0)).toBeCloseTo(inner, EXACT_DIGITS);
    expect(bendAllowanceMm(of, 0.5)).toBeCloseTo(middle, EXACT_DIGITS);
    expect(bendAllowanceMm(of, 1)).toBeCloseTo(outer, EXACT_DIGITS);
    expect(bendAllowanceMm(of, 1) / bendAllowanceMm(of, 0.5) - 1).toBeCloseTo(strain, EXACT_DIGITS);
  });

  // X2. CLOSED FORM: θ t / 2.
  it.each(SANDWICH_ARCS)("$id, X2: is longer at mid-thickness than at its hollow face by θ t / 2", (arc) => {
    expect(bendAllowanceMm(arc.of, 0.5) - bendAllowanceMm(arc.of, 0)).toBeCloseTo(arc.difference, 9);
  });
});

// PUBLISHED, in inches: US Navy NAVEDTRA 14119, p. 13-43, examples 1 and 2 (fig. 13-50); K = 1/2, π taken as 3.14.
const NAVY_EXAMPLES = [
  { id: "O5", of: bend(3, 0.5, 90), printed: 5.1, exact: 5.105088062, toleranceIn: 0.006 },
  { id: "O6", of: bend(1, 0.5, 180), printed: 3.925, exact: 3.926990817, toleranceIn: 0.003 },
];

describe("the bend allowance of half-inch plate", () => {
  it.each(NAVY_EXAMPLES)("$id: is $printed in", ({ of, printed, exact, toleranceIn }) => {
    expect(Math.abs(bendAllowanceMm(of, 0.5) - printed)).toBeLessThanOrEqual(toleranceIn);
    expect(bendAllowanceMm(of, 0.5)).toBeCloseTo(exact, 8);
  });
});

describe("a U-channel of 0.040 in sheet bent to 0.16 in", () => {
  const channel = bend(0.16, 0.04, 90);

  // O7. PUBLISHED: FAA Aviation Maintenance Technician Handbook, Airframe, vol. 1, fig. 4-124 to 4-126.
  it("O7: has set-backs of 0.2 in, and flats of 0.8, 1.6 and 0.8 in between its bends", () => {
    expect(setBackMm(channel)).toBeCloseTo(0.2, EXACT_DIGITS);
    const flats = [
      { mouldLine: 1, bends: 1 },
      { mouldLine: 2, bends: 2 },
      { mouldLine: 1, bends: 1 },
    ].map(({ mouldLine, bends }) => mouldLine - bends * setBackMm(channel));
    for (const [i, expected] of [0.8, 1.6, 0.8].entries()) expect(flats[i]).toBeCloseTo(expected, 12);
  });

  // O8. METHOD: US Navy aviation training text, p. 13-19.
  it("O8: has an empirical allowance of 0.2772 in, a neutral fibre at 0.447 of its thickness", () => {
    const of = { insideRadius: 0.16, thickness: 0.04, angleDegrees: 90 };
    expect(aircraftAllowance(of)).toBeCloseTo(0.2772, 9);
    expect(aircraftAllowance(of, 0.01743)).toBeCloseTo(0.279072, 9);
    expect(bendAllowanceMm(channel, 0.5)).toBeCloseTo(0.2827433388, 9);
    // 0.0078 a degree is K = 0.0078 · 180 / π.
    const sharp = aircraftAllowance({ insideRadius: 0, thickness: 1, angleDegrees: 90 });
    expect(kFactorOfAllowance(bend(0, 1, 90), sharp)).toBeCloseTo(0.44690708, 8);
  });
});

// O9. PUBLISHED: a sheet metal workbook, page on right-angle bends; T 0.050, R 0.032, three bends, inches.
describe("a bracket of four legs and three right angles", () => {
  const corner = bend(0.032, 0.05, 90);
  const allowance = aircraftAllowance({ insideRadius: 0.032, thickness: 0.05, angleDegrees: 90 }, 0.01743);

  it("O9: has an allowance of 0.085 and a deduction of 0.079 in a bend, 2.973 in flat", () => {
    expect(Math.abs(allowance - 0.085)).toBeLessThanOrEqual(0.0005);
    expect(allowance).toBeCloseTo(0.0852984, EXACT_DIGITS);
    const deduction = bendDeductionMm(corner, kFactorOfAllowance(corner, allowance));
    expect(Math.abs(deduction - 0.079)).toBeLessThanOrEqual(0.0005);
    expect(deduction).toBeCloseTo(0.0787016, EXACT_DIGITS);
    const flat = 0.74 + 0.42 + 1.05 + 1.0 - 3 * deduction;
    expect(Math.abs(flat - 2.973)).toBeLessThanOrEqual(0.001);
    expect(flat).toBeCloseTo(2.9738952, EXACT_DIGITS);
  });

  it("gives its allowance back from the deduction", () => {
    expect(allowanceOfDeductionMm(corner, 0.0787016)).toBeCloseTo(0.0852984, EXACT_DIGITS);
  });
});

// O10. MEMORY: Machinery's Handbook, right-angle bends in metal, L = c T + 1.57 R; T = 0.125, R = 0.25 in.
const HANDBOOK = [
  { c: 0.55, length: 0.46125, k: 0.35014087 },
  { c: 0.64, length: 0.4725, k: 0.40743665 },
  { c: 0.71, length: 0.48125, k: 0.45200004 },
];

describe("the handbook rule for right angles, O10", () => {
  it.each(HANDBOOK)("c = $c is a K factor of $k", ({ c, length, k }) => {
    expect(kFactorOfRightAngle(c)).toBeCloseTo(k, 8);
    // The rule rounds π / 2 to 1.57: over a radius of 0.25 in that is 0.0002 in.
    const exact = bendAllowanceMm(bend(0.25, 0.125, 90), kFactorOfRightAngle(c));
    expect(exact - (Math.PI / 2 - 1.57) * 0.25).toBeCloseTo(length, 9);
  });
});

// O11, O12. MEMORY, and web copies contradict each other: tests of the convention only.
const DIN_FACTORS = [
  [1, 0.65],
  [1.5, 0.73804563],
  [2, 0.800515],
  [2.5, 0.84897],
  [3, 0.88856063],
  [4, 0.95103],
  [5, 0.999485],
  [5.001, 1],
  [8, 1],
] as const;

const DIN_COMPENSATIONS = [
  { r: 3, s: 3, opening: 90, v: -5.75608460099 },
  { r: 6, s: 3, opening: 90, v: -6.68905301202 },
  { r: 5, s: 2, opening: 90, v: -4.81245940166 },
  { r: 16, s: 4, opening: 90, v: -11.8795099236 },
  { r: 3, s: 3, opening: 120, v: -2.76559296427 },
  { r: 6, s: 3, opening: 135, v: -1.80037062873 },
  { r: 3, s: 3, opening: 60, v: -3.67477946799 },
];

describe("the convention of DIN 6935", () => {
  it.each(DIN_FACTORS)("O11: at r/s %d its factor is %d", (ratio, factor) => {
    expect(dinFactor(bend(2 * ratio, 2, 90))).toBeCloseTo(factor, 8);
  });

  it.each(DIN_COMPENSATIONS)("O12: r $r, s $s, open by $opening°: v = $v", ({ r, s, opening, v }) => {
    expect(dinCompensationMm(bend(r, s, 180 - opening))).toBeCloseTo(v, 9);
  });

  it("O12: legs of 50 and 50 at a right angle are 94.243915399 flat", () => {
    expect(50 + 50 + dinCompensationMm(bend(3, 3, 90))).toBeCloseTo(94.243915399, 9);
  });

  it("has twice our K factor as its factor, and our deduction as its compensation for open bends", () => {
    for (const angleDegrees of [20, 45, 60, 90]) {
      const of = bend(3, 2, angleDegrees);
      expect(dinCompensationMm(of)).toBeCloseTo(-bendDeductionMm(of, dinFactor(of) / 2), EXACT_DIGITS);
    }
  });
});
