import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  type ArcPiece,
  type CubicPiece,
  crossingParameters,
  derivativeOnPiece,
  extremeParameters,
  pointOnPiece,
} from "../../../core/curves/index.ts";
import type { Vec2 } from "../../../core/foundation/index.ts";
import { SEED } from "./drawn-paths.ts";
import { anyPiece } from "./pieces.arbitrary.ts";

const halfCircle: ArcPiece = {
  kind: "arc",
  edgeId: "e",
  centre: [0, 0],
  radiusMm: 10,
  startRad: 0,
  sweepRad: Math.PI,
};
/** y = 24 t (t − 1/2)(t − 1) over x = t. */
const wave: CubicPiece = { kind: "cubic", edgeId: "e", first: [0, 1, 0, 0], second: [0, 12, -36, 24] };

describe("where a piece meets a straight line", () => {
  it("a line meets it once, at an end or not at all", () => {
    const line = { kind: "line", edgeId: "e", from: [0, 0], to: [40, 20] } as const;
    expect(crossingParameters(line, [1, 0], 10)).toEqual([0.25]);
    expect(crossingParameters(line, [1, 0], 0)).toEqual([0]);
    expect(crossingParameters(line, [0, 1], 20)).toEqual([1]);
    expect(crossingParameters(line, [1, 0], 40.001)).toEqual([]);
    expect(crossingParameters(line, [-1, 2], 0)).toEqual([]);
    expect(crossingParameters(line, [-1, 2], 5)).toEqual([]);
  });

  it("an arc meets it twice, once where it touches, and at its ends", () => {
    const twice = crossingParameters(halfCircle, [0, 1], 5);
    expect(twice.map((t) => t * 6)).toEqual([expect.closeTo(1, 12), expect.closeTo(5, 12)]);
    expect(crossingParameters(halfCircle, [0, 1], 10)).toEqual([expect.closeTo(0.5, 7)]);
    expect(crossingParameters(halfCircle, [0, 1], 0)).toEqual([0, 1]);
    expect(crossingParameters(halfCircle, [0, 1], 10.01)).toEqual([]);
  });

  it("a cubic meets it three times", () => {
    expect(crossingParameters(wave, [0, 1], 0)).toEqual([0, expect.closeTo(0.5, 12), 1]);
    expect(crossingParameters(wave, [0, 1], 0.5)).toHaveLength(2);
  });

  it("every crossing lies on the line, and their number is the count of changes of side", () => {
    const angle = fc.double({ min: 0, max: 6.3, noNaN: true });
    fc.assert(
      fc.property(
        anyPiece,
        angle,
        fc.double({ min: 0.001, max: 0.999, noNaN: true }),
        (piece, angleRad, t0) => {
          const normal: Vec2 = [Math.cos(angleRad), Math.sin(angleRad)];
          const miss = (t: number) => dot(normal, pointOnPiece(piece, t)) - offset;
          const offset = dot(normal, pointOnPiece(piece, t0));
          const found = crossingParameters(piece, normal, offset);
          for (const t of found) expect(Math.abs(miss(t))).toBeLessThan(1e-8);
          expect(found).toEqual([...found].sort((a, b) => a - b));
          expect(found.length).toBeGreaterThanOrEqual(changesOfSide(miss));
        },
      ),
      { seed: SEED, numRuns: 300 },
    );
  });
});

describe("where a piece is farthest", () => {
  it("the top of an arc and of a wave", () => {
    expect(extremeParameters(halfCircle, [0, 1])).toEqual([expect.closeTo(0.5, 12)]);
    expect(extremeParameters(halfCircle, [1, 0])).toEqual([]);
    const away = Math.sqrt(1 / 12);
    expect(extremeParameters(wave, [0, 1])).toEqual([
      expect.closeTo(0.5 - away, 12),
      expect.closeTo(0.5 + away, 12),
    ]);
  });

  it("nowhere inside a piece is farther than its ends and extremes", () => {
    fc.assert(
      fc.property(anyPiece, fc.double({ min: 0, max: 6.3, noNaN: true }), (piece, angleRad) => {
        const normal: Vec2 = [Math.cos(angleRad), Math.sin(angleRad)];
        const extremes = extremeParameters(piece, normal);
        for (const t of extremes)
          expect(Math.abs(dot(normal, derivativeOnPiece(piece, t)))).toBeLessThan(1e-6);
        const reach = (t: number) => dot(normal, pointOnPiece(piece, t));
        const most = Math.max(...[0, 1, ...extremes].map(reach));
        for (let i = 0; i <= 50; i++) expect(reach(i / 50)).toBeLessThanOrEqual(most + 1e-9);
      }),
      { seed: SEED, numRuns: 200 },
    );
  });
});

const dot = (a: Vec2, b: Vec2): number => a[0] * b[0] + a[1] * b[1];

function changesOfSide(miss: (t: number) => number): number {
  let count = 0;
  for (let i = 0; i < 400; i++) if (miss(i / 400) * miss((i + 1) / 400) < 0) count++;
  return count;
}
