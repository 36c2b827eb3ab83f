import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cubicSpline, type SplineInterval } from "../../../core/curves/index.ts";
import { SEED } from "./drawn-paths.ts";

const EXACT = 1e-12;

describe("one-dimensional spline", () => {
  it("a clamped spline through points of a cubic is that cubic", () => {
    const f = (x: number) => 2 - x + 3 * x * x - 0.5 * x ** 3;
    const slope = (x: number) => -1 + 6 * x - 1.5 * x * x;
    const knots = [-1, 0.2, 0.9, 2.5, 4];
    const spline = cubicSpline(knots, knots.map(f), {
      kind: "open",
      start: { kind: "clamped", slope: slope(-1) },
      end: { kind: "clamped", slope: slope(4) },
    });
    spline.forEach((interval, i) => {
      const x = knots[i] ?? 0;
      expect(interval[0]).toBeCloseTo(f(x), 12);
      expect(interval[1]).toBeCloseTo(slope(x), 10);
      expect(interval[2]).toBeCloseTo(3 - 1.5 * x, 10);
      expect(interval[3]).toBeCloseTo(-0.5, 10);
    });
  });

  it("a natural spline through points of a straight line is straight", () => {
    const spline = cubicSpline([0, 1, 5, 6], [1, 3, 11, 13], {
      kind: "open",
      start: { kind: "natural" },
      end: { kind: "natural" },
    });
    for (const [, b, c, d] of spline)
      expect([b, c, d].map((x) => Math.abs(x - (x === b ? 2 : 0)))).toEqual([0, 0, 0]);
  });

  it("a closed spline joins its end to its start with slope and bend, for two knots and for many", () => {
    const knotSteps = fc.array(
      fc.tuple(fc.double({ min: 0.1, max: 4, noNaN: true }), fc.double({ min: -9, max: 9, noNaN: true })),
      { minLength: 2, maxLength: 9 },
    );
    fc.assert(
      fc.property(knotSteps, (steps) => {
        const knots = [0];
        for (const [h] of steps) knots.push((knots.at(-1) ?? 0) + h);
        const values = steps.map(([, y]) => y);
        const spline = cubicSpline(knots, [...values, values[0] ?? 0], { kind: "periodic" });
        spline.forEach((interval, i) => {
          const next = spline[(i + 1) % spline.length] ?? interval;
          const h = (knots[i + 1] ?? 0) - (knots[i] ?? 0);
          const size = 1 + 100 * Math.max(...interval.map(Math.abs), ...next.map(Math.abs));
          const end = endOf(interval, h);
          [next[0], next[1], 2 * next[2]].forEach((value, k) => {
            expect(Math.abs((end[k] ?? Number.NaN) - value)).toBeLessThan(EXACT * size);
          });
        });
      }),
      { seed: SEED, numRuns: 200 },
    );
  });
});

/** Value, slope and bend at the end of an interval. */
const endOf = ([a, b, c, d]: SplineInterval, h: number): number[] => [
  a + h * (b + h * (c + h * d)),
  b + h * (2 * c + h * 3 * d),
  2 * c + 6 * d * h,
];
