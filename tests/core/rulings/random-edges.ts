import fc from "fast-check";
import type { Triple } from "./edges-of.ts";

/** Two edges as functions of [0, 1], such as sheets of a floor have: 0.6 to 2 m long, 150 to 500 mm apart. */
export interface EdgeFunctions {
  readonly first: (t: number) => Triple;
  readonly second: (t: number) => Triple;
}

interface Wave {
  readonly length: number;
  readonly out: number;
  readonly ramp: number;
  readonly from: number;
  readonly sway: number;
  readonly phase: number;
}

const wave = fc.record({
  length: fc.double({ min: 600, max: 2000, noNaN: true }),
  out: fc.double({ min: -60, max: 60, noNaN: true }),
  ramp: fc.double({ min: -120, max: 200, noNaN: true }),
  from: fc.double({ min: -0.3, max: 0.3, noNaN: true }),
  sway: fc.double({ min: 0, max: 25, noNaN: true }),
  phase: fc.double({ min: 0, max: 3, noNaN: true }),
});

/** Edges that are unlike each other: the sheet between them is twisted. */
export const warpedEdges: fc.Arbitrary<EdgeFunctions> = fc
  .record({ one: wave, two: wave, apart: fc.double({ min: 150, max: 500, noNaN: true }) })
  .map(({ one, two, apart }) => ({
    first: along(one, 0),
    second: along({ ...two, length: one.length * 0.9 }, apart),
  }));

const along =
  ({ length, out, ramp, from, sway, phase }: Wave, y: number) =>
  (t: number): Triple => [
    length * t,
    y + out * t * t + sway * Math.sin(3 * t + phase),
    ramp * (t - from) ** 2 + 0.5 * sway * Math.sin(2 * t + phase),
  ];

/** Edges on one oblique cone, by unlike parameters: the sheet between them is developable. */
export const coneEdges: fc.Arbitrary<EdgeFunctions> = fc
  .record({
    apexX: fc.double({ min: -300, max: 900, noNaN: true }),
    height: fc.double({ min: 1500, max: 3000, noNaN: true }),
    turn: fc.double({ min: 0.5, max: 2, noNaN: true }),
    squeeze: fc.double({ min: 0.6, max: 1.4, noNaN: true }),
    low: fc.double({ min: 0.1, max: 0.3, noNaN: true }),
    skew: fc.double({ min: -0.08, max: 0.08, noNaN: true }),
    lag: fc.double({ min: -0.4, max: 0.4, noNaN: true }),
  })
  .map(({ apexX, height, turn, squeeze, low, skew, lag }) => {
    const on = (t: number, part: number): Triple => {
      const angle = turn * t + 0.4;
      const [x, y] = [900 * Math.sin(angle), 900 * squeeze * Math.cos(angle)];
      return [x + part * (apexX - x), y - part * y, part * height];
    };
    return {
      first: (t) => on(t, 0.02 * Math.sin(2 * t)),
      second: (t) => on(t + lag * t * (1 - t), low + skew * t),
    };
  });
