import { Bezier } from "bezier-js";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type CubicPiece, parameterAtLength, pieceLengthMm } from "../../../core/curves/index.ts";
import { ROUNDING_MM, SEED } from "./drawn-paths.ts";

/** What the curve promises at any place (relative), and what the other library's fixed 24-point rule keeps. */
const LENGTH_RELATIVE = 1e-9;
const BEZIER_RELATIVE = 1e-7;

const cubic = (first: CubicPiece["first"], second: CubicPiece["second"]): CubicPiece => ({
  kind: "cubic",
  edgeId: "e",
  first,
  second,
});

/** Gentle cubics, as drawn: the control points advance along the first axis. */
const drawnCubic = fc
  .tuple(
    fc.double({ min: 50, max: 400, noNaN: true }),
    fc.tuple(...([0, 1, 2, 3] as const).map(() => fc.double({ min: -120, max: 120, noNaN: true }))),
  )
  .map(([stepMm, heights]) => heights.map((y, i) => ({ x: stepMm * i, y })));

describe("length of a piece", () => {
  it("agrees with another library's length of the same Bézier curve", () => {
    fc.assert(
      fc.property(drawnCubic, (control) => {
        const own = pieceLengthMm(fromControl(control));
        expect(Math.abs(own / new Bezier(control).length() - 1)).toBeLessThan(BEZIER_RELATIVE);
      }),
      { seed: SEED, numRuns: 100 },
    );
  });

  it("a cubic with a cusp inside is as long as its two sides", () => {
    // x = (t − 0.4)², y = (t − 0.4)³: length (8/27) of ((1 + 9u/4)^1.5 − 1) for each side, u = (distance in t)².
    const side = (w: number) => (8 / 27) * ((1 + (9 * w * w) / 4) ** 1.5 - 1);
    const a = 0.4;
    const cusp = cubic([a * a, -2 * a, 1, 0], [-(a ** 3), 3 * a * a, -3 * a, 1]);
    const expected = side(0.4) + side(0.6);
    expect(Math.abs(pieceLengthMm(cusp) / expected - 1)).toBeLessThan(LENGTH_RELATIVE);
  });

  it("a run back over itself counts both ways", () => {
    // x = t − t²: out to 1/4 and back.
    expect(pieceLengthMm(cubic([0, 1, -1, 0], [0, 0, 0, 0]))).toBeCloseTo(0.5, 12);
  });

  it("backward is negative", () => {
    const piece = cubic([0, 100, 30, -10], [0, 0, 80, 5]);
    expect(pieceLengthMm(piece, 0.7, 0.2)).toBe(-pieceLengthMm(piece, 0.2, 0.7));
  });

  it("the place at a length is where the length to it is that length", () => {
    fc.assert(
      fc.property(drawnCubic, fc.double({ min: 0, max: 1, noNaN: true }), (control, share) => {
        const piece = fromControl(control);
        const wholeMm = pieceLengthMm(piece);
        const t = parameterAtLength(piece, share * wholeMm);
        expect(Math.abs(pieceLengthMm(piece, 0, t) - share * wholeMm)).toBeLessThan(
          LENGTH_RELATIVE * wholeMm,
        );
      }),
      { seed: SEED, numRuns: 200 },
    );
  });

  it("a place beside a cusp is found as well", () => {
    const piece = cubic([0, 0, 4, 0], [0, 0, 0, 8]);
    for (const lengthMm of [1e-6, 1e-3, 0.5, 9]) {
      expect(Math.abs(pieceLengthMm(piece, 0, parameterAtLength(piece, lengthMm)) - lengthMm)).toBeLessThan(
        ROUNDING_MM,
      );
    }
  });

  it("lengths beyond the piece are held at its ends, and a point has no length", () => {
    const piece = cubic([0, 100, 0, 0], [0, 0, 0, 0]);
    expect([parameterAtLength(piece, -5), parameterAtLength(piece, 120)]).toEqual([0, 1]);
    expect(parameterAtLength(cubic([7, 0, 0, 0], [7, 0, 0, 0]), 3)).toBe(0);
  });
});

function fromControl(control: readonly { readonly x: number; readonly y: number }[]): CubicPiece {
  const toCoefficients = (p: readonly number[]): CubicPiece["first"] => {
    const [a = 0, b = 0, c = 0, d = 0] = p;
    return [a, 3 * (b - a), 3 * (a - 2 * b + c), d - a + 3 * (b - c)];
  };
  return cubic(toCoefficients(control.map(({ x }) => x)), toCoefficients(control.map(({ y }) => y)));
}
