import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  type CubicPiece,
  derivativeOnPiece,
  flattenPiece,
  pointOnPiece,
} from "../../../core/curves/index.ts";
import { CHORD_ERROR_MM } from "../../../core/foundation/index.ts";
import { SEED } from "./drawn-paths.ts";
import { anyPiece } from "./pieces.arbitrary.ts";

const LIMITS = { chordErrorMm: 0.05, turnRad: 0.1 };

describe("chords of a piece", () => {
  it("a line is one chord", () => {
    expect(flattenPiece({ kind: "line", edgeId: "e", from: [0, 0], to: [900, 1] }, LIMITS)).toEqual([0, 1]);
  });

  it("an arc is cut evenly, by the tighter of the two limits", () => {
    const arc = { kind: "arc", edgeId: "e", centre: [0, 0], startRad: 0, sweepRad: 1 } as const;
    expect(flattenPiece({ ...arc, radiusMm: 1 }, LIMITS)).toHaveLength(11);
    // Sagitta 0.05 at R = 4000: chord 2 √(2 R s) = 40 mm, so a 4000 mm arc takes 100 chords.
    expect(flattenPiece({ ...arc, radiusMm: 4000 }, LIMITS)).toHaveLength(101);
  });

  it("chords of any piece run from end to end and keep both limits", () => {
    fc.assert(
      fc.property(anyPiece, (piece) => {
        const list = flattenPiece(piece, LIMITS);
        expect([list[0], list.at(-1)]).toEqual([0, 1]);
        list.slice(1).forEach((to, i) => {
          const from = list[i] ?? 0;
          expect(to).toBeGreaterThan(from);
          if (to - from < 1e-5) return;
          expect(farthestFromChord(piece, from, to)).toBeLessThan(LIMITS.chordErrorMm * 1.000001);
          expect(turnOver(piece, from, to)).toBeLessThan(LIMITS.turnRad * 1.000001);
        });
      }),
      { seed: SEED, numRuns: 60 },
    );
  });

  it("the area under finely cut chords is that of the curve within a millionth", () => {
    // y = 100 sin-like bump 400 t (1 − t)² over x = 300 t: area 300 · 400 / 12.
    const bump: CubicPiece = {
      kind: "cubic",
      edgeId: "e",
      first: [0, 300, 0, 0],
      second: [0, 400, -800, 400],
    };
    const points = flattenPiece(bump, { chordErrorMm: CHORD_ERROR_MM, turnRad: 0.002 }).map((t) =>
      pointOnPiece(bump, t),
    );
    let area = 0;
    points.slice(1).forEach((b, i) => {
      const a = points[i] ?? b;
      area += ((b[0] - a[0]) * (a[1] + b[1])) / 2;
    });
    expect(Math.abs(area / 10_000 - 1)).toBeLessThan(1e-6);
  });

  it("a cusp ends after finitely many chords", () => {
    const cusp: CubicPiece = {
      kind: "cubic",
      edgeId: "e",
      first: [16, -80, 100, 0],
      second: [-6.4, 48, -120, 100],
    };
    expect(flattenPiece(cusp, { chordErrorMm: 0.005, turnRad: 0.002 }).length).toBeLessThan(5000);
  });
});

type Piece = Parameters<typeof pointOnPiece>[0];

function farthestFromChord(piece: Piece, from: number, to: number): number {
  const a = pointOnPiece(piece, from);
  const b = pointOnPiece(piece, to);
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
  let farthest = 0;
  for (let i = 1; i < 8; i++) {
    const p = pointOnPiece(piece, from + ((to - from) * i) / 8);
    const across = Math.abs((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]));
    farthest = Math.max(farthest, length === 0 ? 0 : across / length);
  }
  return farthest;
}

function turnOver(piece: Piece, from: number, to: number): number {
  let turn = 0;
  for (let i = 0; i < 8; i++) {
    const a = derivativeOnPiece(piece, from + ((to - from) * i) / 8);
    const b = derivativeOnPiece(piece, from + ((to - from) * (i + 1)) / 8);
    turn += Math.abs(Math.atan2(a[0] * b[1] - a[1] * b[0], a[0] * b[0] + a[1] * b[1]));
  }
  return turn;
}
