import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  compilePath,
  largestCornerRadius,
  middleOfCorner,
  nearestOnPiece,
  radiusThrough,
  type StraightCorner,
} from "../../../core/curves/index.ts";
import type { Vec2 } from "../../../core/foundation/index.ts";
import { SEED } from "./drawn-paths.ts";

const square: StraightCorner = { before: [0, 0], at: [100, 0], after: [100, 60] };
const pathOf = ({ before, at, after }: StraightCorner, radiusMm: number) =>
  compilePath({
    closed: false,
    elements: [
      { kind: "node", id: "a", at: before, next: "line" },
      { kind: "node", id: "b", at, radiusMm, next: "line" },
      { kind: "node", id: "c", at: after, next: "line" },
    ],
  });

describe("the radius of a corner", () => {
  it("of a right angle: the arc's middle lies r (√2 − 1) from the corner, and the shorter side is the largest radius", () => {
    const [x, y] = middleOfCorner(square, 50);
    expect(Math.hypot(x - 100, y)).toBeCloseTo(50 * (Math.SQRT2 - 1), 9);
    expect(radiusThrough(square, [x, y])).toBeCloseTo(50, 9);
    expect(radiusThrough(square, [150, -50])).toBe(0);
    expect(largestCornerRadius(square)).toBeCloseTo(60, 9);
  });

  it("at any angle the drawn arc passes its middle, the largest fits, and a larger one does not", () => {
    const any = fc.tuple(
      fc.double({ min: 0.2, max: 2.9, noNaN: true }),
      fc.integer({ min: 20, max: 400 }),
      fc.integer({ min: 20, max: 400 }),
      fc.double({ min: 0.05, max: 0.95, noNaN: true }),
    );
    fc.assert(
      fc.property(any, ([angleRad, back, on, share]) => {
        const after: Vec2 = [500 + on * Math.cos(Math.PI - angleRad), on * Math.sin(Math.PI - angleRad)];
        const corner: StraightCorner = { before: [500 - back, 0], at: [500, 0], after };
        const most = largestCornerRadius(corner);
        const compiled = pathOf(corner, most * share);
        if (!compiled.ok) throw new Error("the radius fits");
        const middle = middleOfCorner(corner, most * share);
        const missMm = Math.min(
          ...compiled.value.pieces.map((piece) => nearestOnPiece(piece, middle).distanceMm),
        );
        expect(missMm).toBeLessThan(1e-6);
        expect(radiusThrough(corner, middle)).toBeCloseTo(most * share, 5);
        expect(pathOf(corner, most * 0.999).ok).toBe(true);
        expect(pathOf(corner, most * 1.001).ok).toBe(false);
      }),
      { seed: SEED, numRuns: 100 },
    );
  });
});
