import { describe, expect, it } from "vitest";
import {
  type ArcPiece,
  type CubicPiece,
  compilePath,
  curvatureComb,
  middleOfPieces,
  pointOnPiece,
  tightestPlace,
  wherePiecesMeet,
} from "../../../core/curves/index.ts";
import type { Vec2 } from "../../../core/foundation/index.ts";

const arc: ArcPiece = {
  kind: "arc",
  edgeId: "e",
  centre: [0, 0],
  radiusMm: 250,
  startRad: 0.2,
  sweepRad: -1.1,
};
const cubic: CubicPiece = {
  kind: "cubic",
  edgeId: "e",
  first: [0, 300, -90, 20],
  second: [10, -40, 260, -120],
};

/** One over the radius of the circle through three points of a curve close together. */
function bendThrough(a: Vec2, b: Vec2, c: Vec2): number {
  const twiceArea = (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
  const side = (p: Vec2, q: Vec2) => Math.hypot(q[0] - p[0], q[1] - p[1]);
  return (2 * twiceArea) / (side(a, b) * side(b, c) * side(c, a));
}

describe("a curvature comb", () => {
  it("teeth on an arc are all one over its radius, on the side that its direction says", () => {
    const teeth = curvatureComb([arc], 20);
    expect(teeth.length).toBeGreaterThan(10);
    for (const { at, left, curvaturePerMm } of teeth) {
      expect(curvaturePerMm).toBeCloseTo(-1 / 250, 12);
      expect(left[0] * at[0] + left[1] * at[1]).toBeCloseTo(250, 9);
    }
  });

  it("its largest tooth on a cubic is that of the tightest circle through three near points", () => {
    const steps = 20_000;
    let most = 0;
    for (let index = 1; index < steps; index += 1) {
      const [a, b, c] = [-1, 0, 1].map((by) => pointOnPiece(cubic, (index + by * 0.9) / steps)) as [
        Vec2,
        Vec2,
        Vec2,
      ];
      most = Math.max(most, Math.abs(bendThrough(a, b, c)));
    }
    expect(tightestPlace([cubic])?.radiusMm).toBeCloseTo(1 / most, 1);
  });

  it("straight pieces have no tightest place", () => {
    expect(tightestPlace([{ kind: "line", edgeId: "e", from: [0, 0], to: [1, 1] }])).toBeUndefined();
  });

  it("a corner of a curve run shows as a jump between two teeth in one place", () => {
    const compiled = compilePath({
      closed: false,
      elements: [
        { kind: "node", id: "a", at: [0, 0], tangentOutRad: 0, next: "curve" },
        { kind: "node", id: "b", at: [100, 40], meets: "corner", next: "curve" },
        { kind: "node", id: "c", at: [200, 0], next: "line" },
      ],
    });
    const teeth = compiled.ok ? curvatureComb(compiled.value.pieces, 10) : [];
    const jumps = teeth.filter(({ at, left }, index) => {
      const before = teeth[index - 1];
      return before && before.at[0] === at[0] && Math.abs(before.left[0] - left[0]) > 0.1;
    });
    expect(jumps).toHaveLength(1);
    expect(jumps[0]?.at).toEqual([100, 40]);
  });
});

describe("places on pieces", () => {
  it("the middle lies halfway by a tape laid along", () => {
    const pieces = [cubic, { kind: "line", edgeId: "e", from: [230, 110], to: [900, 110] }] as const;
    const points = pieces.flatMap((piece) =>
      Array.from({ length: 5001 }, (_, index) => pointOnPiece(piece, index / 5000)),
    );
    let taped = 0;
    const lengths = points.map((point, index) => {
      const before = points[index - 1] ?? point;
      taped += Math.hypot(point[0] - before[0], point[1] - before[1]);
      return taped;
    });
    const halfway = points[lengths.findIndex((length) => length >= taped / 2)] ?? [0, 0];
    const [x, y] = middleOfPieces(pieces);
    expect(Math.hypot(x - halfway[0], y - halfway[1])).toBeLessThan(0.2);
  });

  it("two lines meet where both equations hold, and apart lines nowhere", () => {
    const one = { kind: "line", edgeId: "e", from: [0, 0], to: [100, 50] } as const;
    const other = { kind: "line", edgeId: "f", from: [0, 60], to: [100, -40] } as const;
    expect(wherePiecesMeet(one, other)).toEqual([[expect.closeTo(40, 9), expect.closeTo(20, 9)]]);
    expect(wherePiecesMeet(one, { ...other, to: [20, 40] })).toEqual([]);
  });
});
