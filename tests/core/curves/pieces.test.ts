import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  type ArcPiece,
  type CubicPiece,
  derivativeOnPiece,
  endOfPiece,
  frameOnPiece,
  mirrorPiece,
  pieceLengthMm,
  pointOnPiece,
  reversePiece,
  secondDerivativeOnPiece,
  startOfPiece,
  trimPiece,
} from "../../../core/curves/index.ts";
import { expectPoint, ROUNDING_MM, SEED } from "./drawn-paths.ts";
import { anyPiece } from "./pieces.arbitrary.ts";

const parameter = fc.double({ min: 0, max: 1, noNaN: true });
const settings = { seed: SEED, numRuns: 200 };

describe("pieces", () => {
  it("derivatives are those of the points", () => {
    fc.assert(
      fc.property(anyPiece, fc.double({ min: 0.01, max: 0.99, noNaN: true }), (piece, t) => {
        const h = 1e-4;
        const [a, b, c] = [pointOnPiece(piece, t - h), pointOnPiece(piece, t), pointOnPiece(piece, t + h)];
        expectPoint(derivativeOnPiece(piece, t), [(c[0] - a[0]) / (2 * h), (c[1] - a[1]) / (2 * h)], 0.01);
        expectPoint(
          secondDerivativeOnPiece(piece, t),
          [(c[0] - 2 * b[0] + a[0]) / h ** 2, (c[1] - 2 * b[1] + a[1]) / h ** 2],
          0.1,
        );
      }),
      settings,
    );
  });

  it("a piece run backward passes the same points and changes the sign of its curvature", () => {
    fc.assert(
      fc.property(anyPiece, parameter, (piece, t) => {
        const back = reversePiece(piece);
        expectPoint(pointOnPiece(back, 1 - t), pointOnPiece(piece, t));
        expect([back.edgeId, back.startNodeId, back.endNodeId]).toEqual(["e", "q", "p"]);
        expect(pieceLengthMm(back)).toBeCloseTo(pieceLengthMm(piece), 6);
        if (piece.kind === "arc") {
          expect(frameOnPiece(back, 1 - t).curvaturePerMm).toBe(-frameOnPiece(piece, t).curvaturePerMm);
        }
      }),
      settings,
    );
  });

  it("the other hand of a piece has every second coordinate negated, and the same direction", () => {
    fc.assert(
      fc.property(anyPiece, parameter, (piece, t) => {
        const [a, b] = pointOnPiece(piece, t);
        const other = mirrorPiece(piece);
        expectPoint(pointOnPiece(other, t), [a, -b]);
        expect([other.edgeId, other.startNodeId, other.endNodeId]).toEqual(["e", "p", "q"]);
        expectPoint(startOfPiece(mirrorPiece(other)), startOfPiece(piece));
      }),
      settings,
    );
  });

  it("no piece gets a minus zero by being mirrored", () => {
    const flat = mirrorPiece({ kind: "line", edgeId: "e", from: [0, 0], to: [5, 0] });
    expect(flat).toEqual({ kind: "line", edgeId: "e", from: [0, 0], to: [5, 0] });
  });

  it("a trimmed piece passes the same points, and keeps a node only at an end that is still there", () => {
    fc.assert(
      fc.property(anyPiece, parameter, parameter, parameter, (piece, t0, t1, s) => {
        const part = trimPiece(piece, t0, t1);
        expectPoint(pointOnPiece(part, s), pointOnPiece(piece, t0 + (t1 - t0) * s));
        expect(part.startNodeId).toBe(t0 === 0 ? "p" : undefined);
        expect(part.endNodeId).toBe(t1 === 1 ? "q" : undefined);
      }),
      settings,
    );
  });

  it("the lengths of two parts add up to the whole", () => {
    fc.assert(
      fc.property(anyPiece, parameter, (piece, t) => {
        const whole = pieceLengthMm(piece);
        const parts = pieceLengthMm(trimPiece(piece, 0, t)) + pieceLengthMm(trimPiece(piece, t, 1));
        expect(Math.abs(parts - whole)).toBeLessThan(1e-9 * whole + ROUNDING_MM);
      }),
      settings,
    );
  });

  it("the curvature of a circle is one over its radius, left positive", () => {
    const arc: ArcPiece = {
      kind: "arc",
      edgeId: "e",
      centre: [3, 4],
      radiusMm: 250,
      startRad: 1,
      sweepRad: -2,
    };
    expect(frameOnPiece(arc, 0.3).curvaturePerMm).toBe(-1 / 250);
    expectPoint(frameOnPiece(arc, 0).tangent, [Math.sin(1), -Math.cos(1)], 1e-12);
  });

  it("a cubic that starts from a standstill has the direction in which it sets off", () => {
    const cusp: CubicPiece = { kind: "cubic", edgeId: "e", first: [0, 0, 4, 0], second: [0, 0, 0, 8] };
    expect(frameOnPiece(cusp, 0).tangent).toEqual([1, 0]);
    expect(frameOnPiece(reversePiece(cusp), 1).tangent[0]).toBeCloseTo(-1, 12);
    expectPoint(endOfPiece(cusp), [4, 8]);
  });
});
