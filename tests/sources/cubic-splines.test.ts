import { describe, expect, it } from "vitest";
import { cubicSpline, type SplineEnds, type SplineInterval } from "../../core/curves/index.ts";

/** Closed-form values, relative to one. */
const EXACT = 1e-12;

const natural: SplineEnds = { kind: "open", start: { kind: "natural" }, end: { kind: "natural" } };
const clamped = (first: number, last: number): SplineEnds => ({
  kind: "open",
  start: { kind: "clamped", slope: first },
  end: { kind: "clamped", slope: last },
});

describe("cubic splines of textbooks", () => {
  // S1. MEMORY: Burden & Faires, Numerical Analysis, section on splines.
  it("natural through (1, 2) (2, 3) (3, 5)", () => {
    const spline = cubicSpline([1, 2, 3], [2, 3, 5], natural);
    expectIntervals(spline, [
      [2, 0.75, 0, 0.25],
      [3, 1.5, 0.75, -0.25],
    ]);
    expect(valueAt(spline, [1, 2, 3], 1.5)).toBeCloseTo(2.40625, 12);
    expect(valueAt(spline, [1, 2, 3], 2.5)).toBeCloseTo(3.90625, 12);
  });

  // S2. MEMORY: the same.
  it("clamped through the same points with slopes 2 and 1", () => {
    expectIntervals(cubicSpline([1, 2, 3], [2, 3, 5], clamped(2, 1)), [
      [2, 2, -2.5, 1.5],
      [3, 1.5, 2, -1.5],
    ]);
  });

  // S3. PUBLISHED: printed output of a worked example on matlabcoding.com, "Natural cubic spline interpolation";
  // half a unit in the last printed place.
  it("natural through (0, 1) (1, 2.7) (2, 7.29) (3, 19.68)", () => {
    const spline = cubicSpline([0, 1, 2, 3], [1, 2.7, 7.29, 19.68], natural);
    const printed = [
      [1, 1.44933333, 0, 0.25066667],
      [2.7, 2.20133333, 0.752, 1.63666667],
      [7.29, 8.61533333, 5.662, -1.88733333],
    ] as const;
    expectIntervals(spline, printed, 5e-9);
  });

  // S4. PUBLISHED: README of msaw97/metody5-spline-interpolation (equivalent form, reduced).
  it("natural through t = 0 to 3, y = 1, 1, 0, 10", () => {
    expectIntervals(cubicSpline([0, 1, 2, 3], [1, 1, 0, 10], natural), [
      [1, 1, 0, -1],
      [1, -2, -3, 4],
      [0, 4, 9, -3],
    ]);
  });

  // S5. MEMORY: Burden & Faires, example (19.55229, 19.05965); further digits computed.
  it("the integral of a spline through eˣ at 0, 1, 2, 3", () => {
    const values = [0, 1, 2, 3].map(Math.exp);
    const integral = (ends: SplineEnds) =>
      cubicSpline([0, 1, 2, 3], values, ends).reduce(
        (sum, [a, b, c, d]) => sum + a + b / 2 + c / 3 + d / 4,
        0,
      );
    expect(Math.abs(integral(natural) - 19.55228648940373)).toBeLessThan(1e-9);
    expect(Math.abs(integral(clamped(1, Math.exp(3))) - 19.05964497871789)).toBeLessThan(1e-9);
  });

  // S6. MEMORY: Hall & Meyer, J. Approx. Theory 1976: error ≤ (5/384) h⁴ max|f⁗|.
  it("the error of a clamped spline through sin falls with the fourth power of the step", () => {
    const expected = [1.12395e-3, 6.32309e-5, 3.88932e-6];
    const bounds = [4.95448e-3, 3.09655e-4, 1.93534e-5];
    [4, 8, 16].forEach((count, i) => {
      const error = largestSineError(count);
      expect(Math.abs(error / (expected[i] ?? 0) - 1)).toBeLessThan(0.01);
      expect(error).toBeLessThan(bounds[i] ?? 0);
    });
    expect(Math.log2(largestSineError(32) / largestSineError(64))).toBeCloseTo(4, 1);
  });

  // CLOSED FORM. A worked example on the web prints 2.0625 and 3.6875 here: one single cubic with f″ = 0 at one end
  // only, which is not the natural spline.
  it("natural through (0, 1) (1, 3) (2, 4) is two cubics, not one", () => {
    const spline = cubicSpline([0, 1, 2], [1, 3, 4], natural);
    expect(valueAt(spline, [0, 1, 2], 0.5)).toBeCloseTo(2.09375, 12);
    expect(valueAt(spline, [0, 1, 2], 1.5)).toBeCloseTo(3.59375, 12);
  });
});

function expectIntervals(
  spline: readonly SplineInterval[],
  expected: readonly (readonly number[])[],
  within = EXACT,
): void {
  expect(spline).toHaveLength(expected.length);
  spline.forEach((interval, i) => {
    interval.forEach((value, k) => {
      expect(Math.abs(value - (expected[i]?.[k] ?? Number.NaN))).toBeLessThan(within);
    });
  });
}

function valueAt(spline: readonly SplineInterval[], knots: readonly number[], x: number): number {
  const last = spline.length - 1;
  const index = Math.min(
    last,
    Math.max(
      0,
      knots.findLastIndex((knot) => knot <= x),
    ),
  );
  const [a, b, c, d] = spline[index] ?? [Number.NaN, 0, 0, 0];
  const u = x - (knots[index] ?? 0);
  return a + u * (b + u * (c + u * d));
}

function largestSineError(count: number): number {
  const knots = Array.from({ length: count + 1 }, (_, i) => (Math.PI * i) / count);
  const spline = cubicSpline(knots, knots.map(Math.sin), clamped(1, -1));
  let largest = 0;
  for (let i = 0; i <= 4000; i++) {
    const x = (Math.PI * i) / 4000;
    largest = Math.max(largest, Math.abs(valueAt(spline, knots, x) - Math.sin(x)));
  }
  return largest;
}
