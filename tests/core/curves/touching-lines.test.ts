import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  type ArcPiece,
  type CubicPiece,
  type CurvePiece,
  footParameters,
  pointOnPiece,
  tangentParameters,
} from "../../../core/curves/index.ts";
import type { Vec2 } from "../../../core/foundation/index.ts";
import { SEED } from "./drawn-paths.ts";
import { anyPiece } from "./pieces.arbitrary.ts";

const circle: ArcPiece = {
  kind: "arc",
  edgeId: "e",
  centre: [100, 50],
  radiusMm: 30,
  startRad: -3,
  sweepRad: 6.2,
};
/** y = x² over x from −1 to 1. */
const bowl: CubicPiece = { kind: "cubic", edgeId: "e", first: [-1, 2, 0, 0], second: [1, -4, 4, 0] };

describe("lines from a point to a curve", () => {
  it("tangents to a circle are as long as the root of d² − r² (Euclid III.36), two of them", () => {
    const from: Vec2 = [0, 0];
    const touched = tangentParameters(circle, from).map((t) => pointOnPiece(circle, t));
    expect(touched).toHaveLength(2);
    for (const [x, y] of touched)
      expect(Math.hypot(x, y)).toBeCloseTo(Math.sqrt(100 ** 2 + 50 ** 2 - 30 ** 2), 9);
    expect(tangentParameters(circle, [110, 50])).toEqual([]);
  });

  it("from (0, −c) two tangents touch y = x² at x = ±√c", () => {
    const xs = tangentParameters(bowl, [0, -0.25]).map((t) => pointOnPiece(bowl, t)[0]);
    expect(xs).toEqual([expect.closeTo(-0.5, 9), expect.closeTo(0.5, 9)]);
  });

  it("from (0, 1) three perpendiculars meet y = x²: at 0 and at ±√½", () => {
    const xs = footParameters(bowl, [0, 1]).map((t) => pointOnPiece(bowl, t)[0]);
    expect(xs).toEqual([
      expect.closeTo(-Math.SQRT1_2, 9),
      expect.closeTo(0, 9),
      expect.closeTo(Math.SQRT1_2, 9),
    ]);
  });

  it("a straight line has one foot, and none beyond its ends", () => {
    const line = { kind: "line", edgeId: "e", from: [0, 0], to: [40, 20] } as const;
    expect(pointOnPiece(line, footParameters(line, [10, 30])[0] ?? Number.NaN)).toEqual([20, 10]);
    expect(footParameters(line, [-10, -30])).toEqual([]);
    expect(tangentParameters(line, [10, 30])).toEqual([]);
  });

  it("a walk along any piece turns from one side to the other exactly where a tangent or a foot is found", () => {
    const anyPoint = fc.tuple(fc.integer({ min: -900, max: 900 }), fc.integer({ min: -900, max: 900 }));
    fc.assert(
      fc.property(anyPiece, anyPoint, (piece, from) => {
        expectTurnsFound(piece, from, tangentParameters(piece, from), ([dx, dy], [x, y]) => x * dy - y * dx);
        expectTurnsFound(piece, from, footParameters(piece, from), ([dx, dy], [x, y]) => x * dx + y * dy);
      }),
      { seed: SEED, numRuns: 150 },
    );
  });
});

/** Finite steps along the piece, not its derivative: whatever changes sign between two has a place between them. */
function expectTurnsFound(
  piece: CurvePiece,
  from: Vec2,
  found: readonly number[],
  side: (step: Vec2, away: Vec2) => number,
): void {
  const count = 500;
  const point = (t: number) => pointOnPiece(piece, t);
  const sideAt = (t: number) => {
    const [a, b, here] = [point(t - 1e-6), point(t + 1e-6), point(t)];
    return side([b[0] - a[0], b[1] - a[1]], [here[0] - from[0], here[1] - from[1]]);
  };
  if (piece.kind === "line" && found.length === 0) return;
  for (let index = 0; index < count; index += 1) {
    const [t0, t1] = [(index + 0.317) / (count + 1), (index + 1.317) / (count + 1)];
    if (sideAt(t0) < 0 === sideAt(t1) < 0) continue;
    expect(found.some((t) => t > t0 - 1e-4 && t < t1 + 1e-4)).toBe(true);
  }
}
