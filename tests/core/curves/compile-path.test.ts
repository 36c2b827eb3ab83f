import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  type CubicPiece,
  type CurvePiece,
  compilePath,
  derivativeOnPiece,
  endOfPiece,
  findSelfCrossings,
  frameOnPiece,
  type LinePiece,
  nodePlace,
  type Path,
  pointOnPiece,
  secondDerivativeOnPiece,
  startOfPiece,
} from "../../../core/curves/index.ts";
import type { Vec2 } from "../../../core/foundation/index.ts";
import {
  closedPath,
  curveNode,
  curveOf,
  expectEndToEnd,
  expectPoint,
  node,
  openPath,
  pieceAt,
  problemsOf,
  ROUNDING_MM,
  SEED,
} from "./drawn-paths.ts";

/** Second derivatives by the knot parameter of curves of some hundred mm are 1e-2 per mm; they agree to this. */
const BEND_PER_MM = 1e-10;

describe("lines", () => {
  it("a square runs through its corners in order and is as long as its sides", () => {
    const curve = curveOf(
      closedPath(node("a", [0, 0]), node("b", [100, 0]), node("c", [100, 100]), node("d", [0, 100])),
    );
    expect(curve.lengthMm).toBe(400);
    expect(curve.startsMm).toEqual([0, 100, 200, 300]);
    expect(curve.pieces.map((piece) => [piece.edgeId, piece.startNodeId, piece.endNodeId])).toEqual([
      ["a", "a", "b"],
      ["b", "b", "c"],
      ["c", "c", "d"],
      ["d", "d", "a"],
    ]);
  });

  it("an open line has one piece less than nodes", () => {
    const curve = curveOf(openPath(node("a", [0, 0]), node("b", [30, 40])));
    expect(curve.pieces).toHaveLength(1);
    expect(curve.lengthMm).toBe(50);
  });
});

describe("radii", () => {
  const withRadius = (radiusMm: number): Path =>
    closedPath(
      node("a", [0, 0], { radiusMm }),
      node("b", [100, 0], { radiusMm }),
      node("c", [100, 100], { radiusMm }),
      node("d", [0, 100], { radiusMm }),
    );

  it("a square with four corner radii is shorter by eight radii and longer by one circle", () => {
    const curve = curveOf(withRadius(20));
    expect(Math.abs(curve.lengthMm - (400 - 160 + 40 * Math.PI))).toBeLessThan(ROUNDING_MM);
    expectEndToEnd(curve);
  });

  it("the arc of a node is two halves that meet in its middle, each with its own edge", () => {
    const curve = curveOf(withRadius(20));
    const place = nodePlace(curve, "b");
    const before = pieceAt(curve, (place?.index ?? 0) - 1);
    const after = pieceAt(curve, place?.index ?? 0);
    expect([before.kind, before.edgeId, before.endNodeId]).toEqual(["arc", "a", "b"]);
    expect([after.kind, after.edgeId, after.startNodeId]).toEqual(["arc", "b", "b"]);
    const middle = 20 * (1 - Math.SQRT1_2);
    expectPoint(startOfPiece(after), [100 - middle, middle]);
    expectPoint(endOfPiece(before), [100 - middle, middle]);
  });

  it("an arc leaves both lines in their own direction, turning left or right", () => {
    for (const side of [1, -1]) {
      const curve = curveOf(
        openPath(
          node("a", [0, 0]),
          node("b", [80, 10 * side], { radiusMm: 33 }),
          node("c", [120, 90 * side], { radiusMm: 7 }),
          node("d", [220, 80 * side]),
        ),
      );
      expectEndToEnd(curve);
      curve.pieces.slice(1).forEach((piece, i) => {
        const { tangent } = frameOnPiece(pieceAt(curve, i), 1);
        expectPoint(frameOnPiece(piece, 0).tangent, tangent, 1e-12);
      });
      expect(frameOnPiece(pieceAt(curve, 1), 0.5).curvaturePerMm).toBeCloseTo(side / 33, 15);
      expect(frameOnPiece(pieceAt(curve, 4), 0.5).curvaturePerMm).toBeCloseTo(-side / 7, 15);
    }
  });

  it("radii that use up a line exactly leave no straight between their arcs", () => {
    const curve = curveOf(withRadius(50));
    expect(curve.pieces.every((piece) => piece.kind === "arc")).toBe(true);
    expect(Math.abs(curve.lengthMm - 100 * Math.PI)).toBeLessThan(ROUNDING_MM);
  });

  it("a radius where the line does not turn changes nothing", () => {
    const curve = curveOf(
      openPath(node("a", [0, 0]), node("b", [50, 0], { radiusMm: 10 }), node("c", [90, 0])),
    );
    expect(curve.pieces.map((piece) => piece.kind)).toEqual(["line", "line"]);
    expect(curve.lengthMm).toBe(90);
  });

  it("a radius that is too large is refused with the largest that fits, and that one does fit", () => {
    const path = withRadius(20);
    const elements = path.elements.map((element, i) => (i === 1 ? { ...element, radiusMm: 90 } : element));
    const problems = problemsOf({ ...path, elements });
    const own = problems.find((problem) => "nodeId" in problem && problem.nodeId === "b");
    expect(own).toMatchObject({ kind: "radius-does-not-fit", radiusMm: 90 });
    const largestMm = own?.kind === "radius-does-not-fit" ? own.largestMm : 0;
    expect(largestMm).toBeCloseTo(80, 9);
    const repaired = elements.map((element, i) => (i === 1 ? { ...element, radiusMm: largestMm } : element));
    expect(problemsOf({ ...path, elements: repaired })).toEqual([]);
  });

  it("a radius beside a curve, or at the end of an open line, is refused", () => {
    const beside = closedPath(
      node("a", [0, 0]),
      node("b", [100, 0], { radiusMm: 5, next: "curve" }),
      node("c", [60, 80]),
    );
    expect(problemsOf(beside)).toEqual([{ kind: "radius-needs-lines", nodeId: "b" }]);
    const atEnd = openPath(node("a", [0, 0], { radiusMm: 5 }), node("b", [100, 0]));
    expect(problemsOf(atEnd)).toEqual([{ kind: "radius-needs-lines", nodeId: "a" }]);
  });

  it("a line that turns straight back takes no radius", () => {
    const back = openPath(node("a", [0, 0]), node("b", [100, 0], { radiusMm: 1 }), node("c", [10, 0]));
    expect(problemsOf(back)).toMatchObject([{ kind: "radius-does-not-fit", nodeId: "b" }]);
  });
});

describe("runs of curves", () => {
  const tail: Vec2 = [560, 40];
  const smoothRun = openPath(
    node("a", [0, 0]),
    curveNode("b", [100, 20], { meets: "smooth" }),
    curveNode("c", [260, 90]),
    curveNode("d", [390, 30]),
    node("e", [480, 60], { meets: "smooth" }),
    node("f", tail),
  );

  it("a run has one tangent and one curvature at its inner nodes", () => {
    const curve = curveOf(smoothRun);
    expectTwiceSmooth(pieceAt(curve, 1), pieceAt(curve, 2));
    expectTwiceSmooth(pieceAt(curve, 2), pieceAt(curve, 3));
  });

  it("a smooth node between line and curve gives the curve the line's unit tangent", () => {
    const curve = curveOf(smoothRun);
    expectPoint(slopeByKnot(pieceAt(curve, 1), 0), unit([100, 20]), 1e-12);
    expectPoint(slopeByKnot(pieceAt(curve, 3), 1), unit([80, -20]), 1e-12);
  });

  it("an end without a tangent has no curvature", () => {
    const curve = curveOf(
      openPath(node("a", [0, 0]), curveNode("b", [100, 20]), curveNode("c", [260, 90]), node("d", [390, 30])),
    );
    expect(Math.abs(frameOnPiece(pieceAt(curve, 1), 0).curvaturePerMm)).toBeLessThan(1e-15);
    expect(Math.abs(frameOnPiece(pieceAt(curve, -1), 1).curvaturePerMm)).toBeLessThan(1e-15);
  });

  it("typed tangents are kept at a corner and at open ends", () => {
    const curve = curveOf(
      openPath(
        curveNode("a", [0, 0], { tangentOutRad: 0.7 }),
        curveNode("b", [100, 20], { meets: "corner", tangentInRad: -0.4, tangentOutRad: 1.1 }),
        node("c", [260, 90], { tangentInRad: 3 }),
      ),
    );
    expectPoint(slopeByKnot(pieceAt(curve, 0), 0), [Math.cos(0.7), Math.sin(0.7)], 1e-12);
    expectPoint(slopeByKnot(pieceAt(curve, 0), 1), [Math.cos(0.4), -Math.sin(0.4)], 1e-12);
    expectPoint(slopeByKnot(pieceAt(curve, 1), 0), [Math.cos(1.1), Math.sin(1.1)], 1e-12);
    expectPoint(slopeByKnot(pieceAt(curve, 1), 1), [Math.cos(3), Math.sin(3)], 1e-12);
  });

  it("a smooth line wins over a typed tangent", () => {
    const curve = curveOf(
      openPath(
        node("a", [0, 0]),
        curveNode("b", [100, 0], { meets: "smooth", tangentOutRad: 1 }),
        node("c", [200, 60]),
      ),
    );
    expectPoint(slopeByKnot(pieceAt(curve, 1), 0), [1, 0], 1e-12);
  });

  it("a corner inside curves lets both sides end by themselves", () => {
    const curve = curveOf(
      openPath(curveNode("a", [0, 0]), curveNode("b", [100, 50], { meets: "corner" }), node("c", [200, 0])),
    );
    expectPoint(frameOnPiece(pieceAt(curve, 0), 1).tangent, unit([100, 50]), 1e-12);
    expectPoint(frameOnPiece(pieceAt(curve, 1), 0).tangent, unit([100, -50]), 1e-12);
  });

  it("a loop of curves without a corner closes with tangent and curvature, wherever it starts", () => {
    const points: Vec2[] = [
      [0, 0],
      [300, -40],
      [420, 160],
      [180, 260],
      [-60, 170],
    ];
    const nodes = points.map((at, i) => curveNode(`n${i}`, at));
    const curve = curveOf(closedPath(...nodes));
    curve.pieces.forEach((piece, i) => {
      expectTwiceSmooth(piece, pieceAt(curve, (i + 1) % curve.pieces.length));
    });
    const turned = curveOf(closedPath(...nodes.slice(2), ...nodes.slice(0, 2)));
    expect(Math.abs(turned.lengthMm - curve.lengthMm)).toBeLessThan(ROUNDING_MM);
  });

  it("a loop of curves with one corner is one run from the corner to itself", () => {
    const curve = curveOf(
      closedPath(
        curveNode("a", [100, 0]),
        curveNode("b", [60, 80]),
        curveNode("c", [0, 0], { meets: "corner", tangentInRad: -Math.PI / 2, tangentOutRad: 0 }),
      ),
    );
    expect(curve.pieces.map((piece) => piece.edgeId)).toEqual(["a", "b", "c"]);
    expectTwiceSmooth(pieceAt(curve, 0), pieceAt(curve, 1));
    expectTwiceSmooth(pieceAt(curve, 2), pieceAt(curve, 0));
    expectPoint(slopeByKnot(pieceAt(curve, 1), 1), [0, -1], 1e-12);
    expectPoint(slopeByKnot(pieceAt(curve, 2), 0), [1, 0], 1e-12);
  });

  it("curves close the loop past its first node", () => {
    const curve = curveOf(
      closedPath(
        curveNode("a", [0, 0]),
        node("b", [100, -30]),
        node("c", [120, 90]),
        curveNode("d", [20, 120]),
      ),
    );
    expectTwiceSmooth(pieceAt(curve, 3), pieceAt(curve, 0));
  });

  it("a stored knot spacing changes the curve, a stored chord does not", () => {
    const run = (knotSpacingMm?: number) =>
      curveOf(
        openPath(
          curveNode("a", [0, 0], knotSpacingMm === undefined ? {} : { knotSpacingMm }),
          curveNode("b", [30, 40]),
          node("c", [100, 40]),
        ),
      ).lengthMm;
    expect(run(50)).toBe(run());
    expect(Math.abs(run(80) - run())).toBeGreaterThan(0.01);
  });

  it("random runs pass through their nodes and are twice smooth inside", () => {
    const points = fc.array(
      fc.tuple(fc.double({ min: -1, max: 1, noNaN: true }), fc.double({ min: 5, max: 90, noNaN: true })),
      {
        minLength: 3,
        maxLength: 12,
      },
    );
    fc.assert(
      fc.property(points, fc.boolean(), (steps, closed) => {
        let angle = 0;
        let at: Vec2 = [0, 0];
        const nodes = steps.map(([turn, length], i) => {
          angle += turn;
          at = [at[0] + length * Math.cos(angle), at[1] + length * Math.sin(angle)];
          return curveNode(`n${i}`, at);
        });
        const path = { closed, elements: nodes };
        const compiled = compilePath(path);
        if (!compiled.ok) return;
        const curve = compiled.value;
        expectEndToEnd(curve);
        curve.pieces.forEach((piece, i) => {
          expectPoint(startOfPiece(piece), nodes[i]?.at ?? [NaN, NaN]);
          const next = curve.pieces[i + 1] ?? (closed ? curve.pieces[0] : undefined);
          if (next) expectTwiceSmooth(piece, next, 1e-7);
        });
      }),
      { seed: SEED, numRuns: 100 },
    );
  });
});

describe("followed stretches", () => {
  const followed: readonly CurvePiece[] = [
    { kind: "line", edgeId: "x", from: [100, 0], to: [100, 60], startNodeId: "x", endNodeId: "y" },
    { kind: "line", edgeId: "y", from: [100, 60], to: [90, 100], startNodeId: "y", endNodeId: "z" },
  ];

  it("a stretch is put in as it is and joined by the segments on both sides", () => {
    const curve = curveOf(
      closedPath(
        node("a", [0, 0]),
        { kind: "stretch", id: "s", pieces: followed, next: "line" },
        node("b", [0, 100]),
      ),
    );
    expect(curve.pieces.map((piece) => piece.edgeId)).toEqual(["a", "x", "y", "s", "b"]);
    expect(curve.pieces.slice(1, 3)).toEqual(followed);
    expect([pieceAt(curve, 0).endNodeId, pieceAt(curve, 3).startNodeId]).toEqual(["x", "z"]);
    expectEndToEnd(curve);
  });

  it("a curve beside a stretch takes up its tangent", () => {
    const curve = curveOf(
      closedPath(
        curveNode("a", [0, 0]),
        { kind: "stretch", id: "s", pieces: followed, next: "curve" },
        node("b", [0, 100]),
      ),
    );
    expectPoint(frameOnPiece(pieceAt(curve, 0), 1).tangent, [0, 1], 1e-12);
    expectPoint(frameOnPiece(pieceAt(curve, 3), 0).tangent, unit([-10, 40]), 1e-12);
  });

  it("two stretches that meet need no segment between them", () => {
    const curve = curveOf(
      closedPath(
        node("a", [0, 0]),
        { kind: "stretch", id: "s", pieces: followed.slice(0, 1), next: "line" },
        { kind: "stretch", id: "t", pieces: followed.slice(1), next: "line" },
      ),
    );
    expect(curve.pieces.map((piece) => piece.edgeId)).toEqual(["a", "x", "y", "t"]);
  });

  it("a node on the end of a stretch is a segment without length", () => {
    const path = closedPath(
      node("a", [0, 0]),
      { kind: "stretch", id: "s", pieces: followed, next: "line" },
      node("b", [90.004, 100]),
    );
    expect(problemsOf(path)).toEqual([{ kind: "zero-length-segment", nodeIds: ["s", "b"] }]);
  });

  it("a radius on a line that runs into a stretch may not reach past the stretch's end", () => {
    const path = (radiusMm: number) =>
      closedPath(
        { kind: "stretch", id: "s", pieces: followed, next: "line" },
        node("b", [0, 100], { radiusMm }),
        node("a", [0, 0]),
      );
    expect(problemsOf(path(40))).toEqual([]);
    expect(problemsOf(path(95))).toMatchObject([
      { kind: "radius-does-not-fit", nodeId: "b", largestMm: expect.closeTo(90, 9) },
    ]);
  });
});

describe("sketches that are no curve", () => {
  it("every problem of a path is named, not the first alone", () => {
    const path = closedPath(
      node("a", [Number.NaN, 0]),
      node("b", [1e9, 0], { radiusMm: -3 }),
      node("c", [5, 5]),
      node("d", [5, 5.001]),
      node("e", [90, 0], { radiusMm: 1e4 }),
      curveNode("f", [90, 90], { radiusMm: 3, tangentOutRad: Number.POSITIVE_INFINITY }),
    );
    expect(problemsOf(path).map((problem) => problem.kind)).toEqual([
      "not-a-number",
      "number-out-of-range",
      "number-out-of-range",
      "not-a-number",
      "zero-length-segment",
      "radius-does-not-fit",
      "radius-needs-lines",
    ]);
  });

  it("a closed line of two nodes encloses nothing", () => {
    expect(problemsOf(closedPath(node("a", [0, 0]), node("b", [9, 0])))).toEqual([
      { kind: "too-few-nodes", count: 2, needed: 3 },
    ]);
    expect(problemsOf(openPath(node("a", [0, 0])))).toEqual([{ kind: "too-few-nodes", count: 1, needed: 2 }]);
    expect(problemsOf(closedPath())).toMatchObject([{ kind: "too-few-nodes", count: 0 }]);
  });

  it("nodes under a hundredth of a millimetre apart are one spot, also across the closing side", () => {
    const path = closedPath(
      node("a", [0, 0]),
      node("b", [50, 0]),
      node("c", [50, 50]),
      node("d", [0.006, 0.006]),
    );
    expect(problemsOf(path)).toEqual([{ kind: "zero-length-segment", nodeIds: ["d", "a"] }]);
  });

  it("a stretch of no pieces is a segment without length", () => {
    const path = closedPath(
      node("a", [0, 0]),
      { kind: "stretch", id: "s", pieces: [], next: "line" },
      node("b", [9, 9]),
    );
    expect(problemsOf(path)).toEqual([{ kind: "zero-length-segment", nodeIds: ["s", "s"] }]);
  });

  it("more nodes than the screen can carry are refused at once", () => {
    const elements = Array.from({ length: 5001 }, (_, i) => node(`n${i}`, [i, (i * i) % 7]));
    expect(problemsOf({ closed: true, elements })).toEqual([
      { kind: "too-many-nodes", count: 5001, most: 5000 },
    ]);
  });

  it("a knot spacing of nothing is out of range", () => {
    const path = openPath(curveNode("a", [0, 0], { knotSpacingMm: 0 }), node("b", [9, 0]));
    expect(problemsOf(path)).toMatchObject([
      { kind: "number-out-of-range", field: "knotSpacingMm", value: 0 },
    ]);
  });
});

describe("whatever is typed", () => {
  const oddNumber = fc.constantFrom(Number.NaN, Number.POSITIVE_INFINITY, 1e9, -1e300, 1e-300, 20_000, -3);
  const mostly = (usual: fc.Arbitrary<number>) =>
    fc.oneof({ weight: 40, arbitrary: usual }, { weight: 1, arbitrary: oddNumber });
  const coordinate = mostly(fc.integer({ min: -300, max: 300 }));
  const direction = mostly(fc.double({ min: -3, max: 3, noNaN: true }));
  const anyNode = fc.record(
    {
      at: fc.tuple(coordinate, coordinate),
      next: fc.constantFrom("line" as const, "curve" as const),
      radiusMm: mostly(fc.constantFrom(0, 0, 0, 0, 5)),
      meets: fc.constantFrom("smooth" as const, "corner" as const),
      tangentInRad: direction,
      tangentOutRad: direction,
      knotSpacingMm: mostly(fc.integer({ min: 1, max: 900 })),
    },
    { requiredKeys: ["at", "next"] },
  );

  it("a path is either a curve of finite pieces through all its nodes, or has problems; it never throws", () => {
    let curves = 0;
    fc.assert(
      fc.property(fc.array(anyNode, { maxLength: 7 }), fc.boolean(), (drawn, closed) => {
        const nodes = drawn.map(({ at, ...rest }, i) => node(`n${i}`, at, rest));
        const compiled = compilePath({ closed, elements: nodes });
        if (!compiled.ok) {
          expect(compiled.problems.length).toBeGreaterThan(0);
          return;
        }
        curves++;
        const curve = compiled.value;
        expectEndToEnd(curve);
        expect(curve.lengthMm).toBeGreaterThan(0);
        expect(Number.isFinite(curve.lengthMm)).toBe(true);
        for (const { id, at, radiusMm } of nodes) {
          const place = nodePlace(curve, id);
          const point = pointOnPiece(pieceAt(curve, place?.index ?? Number.NaN), place?.t ?? Number.NaN);
          expect(point.every(Number.isFinite)).toBe(true);
          if (!radiusMm) expectPoint(point, at);
        }
        expect(findSelfCrossings(curve).length).toBeLessThanOrEqual(50);
      }),
      { seed: SEED, numRuns: 500 },
    );
    expect(curves).toBeGreaterThan(30);
  });
});

const unit = ([a, b]: Vec2): Vec2 => [a / Math.hypot(a, b), b / Math.hypot(a, b)];

/** The knots that a compiled cubic spans: the chord between its ends, as nothing else is stored. */
function knotMm(piece: CurvePiece): number {
  const [a, b] = [startOfPiece(piece), endOfPiece(piece)];
  return Math.hypot(b[0] - a[0], b[1] - a[1]);
}

function slopeByKnot(piece: CurvePiece, t: number): Vec2 {
  const [a, b] = derivativeOnPiece(asCubic(piece), t);
  return [a / knotMm(piece), b / knotMm(piece)];
}

function expectTwiceSmooth(before: CurvePiece, after: CurvePiece, perMm = BEND_PER_MM): void {
  expectPoint(slopeByKnot(before, 1), slopeByKnot(after, 0), 1e-9);
  const bend = (piece: CurvePiece, t: number): Vec2 => {
    const [a, b] = secondDerivativeOnPiece(piece, t);
    return [a / knotMm(piece) ** 2, b / knotMm(piece) ** 2];
  };
  expectPoint(bend(before, 1), bend(after, 0), perMm);
}

function asCubic(piece: CurvePiece): CubicPiece | LinePiece {
  if (piece.kind === "arc") throw new Error("an arc has no knots");
  return piece;
}
