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

/** Even steps, as a builder types them; not the tiny numbers that a search for extremes finds. */
const hundredths = (min: number, max: number) => fc.integer({ min, max }).map((value) => value / 100);

const wave = fc.record({
  length: fc.integer({ min: 600, max: 2000 }),
  out: fc.integer({ min: -60, max: 60 }),
  ramp: fc.integer({ min: -120, max: 200 }),
  from: hundredths(-30, 30),
  sway: fc.integer({ min: 0, max: 25 }),
  phase: hundredths(0, 300),
});

/** Edges that are unlike each other: the sheet between them is twisted. */
export const warpedEdges: fc.Arbitrary<EdgeFunctions> = fc
  .record({ one: wave, two: wave, apart: fc.integer({ min: 150, max: 500 }) })
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
    apexX: fc.integer({ min: -300, max: 900 }),
    height: fc.integer({ min: 1500, max: 3000 }),
    turn: hundredths(50, 200),
    squeeze: hundredths(60, 140),
    low: hundredths(10, 30),
    skew: hundredths(-8, 8),
    lag: hundredths(-40, 40),
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
