import { describe, expect, it } from "vitest";
import {
  endOfPiece,
  frameAtLength,
  locateLength,
  nodePlace,
  startOfPiece,
  subCurve,
  toCurve,
} from "../../../core/curves/index.ts";
import { closedPath, curveNode, curveOf, expectPoint, node, openPath, totalLength } from "./drawn-paths.ts";

const loop = curveOf(
  closedPath(
    node("a", [0, 0]),
    node("b", [100, 0], { radiusMm: 20 }),
    curveNode("c", [100, 100]),
    node("d", [0, 100]),
  ),
);
const open = curveOf(openPath(node("a", [0, 0]), node("b", [100, 0]), node("c", [100, 50])));

describe("places on a curve", () => {
  it("a length is found on its piece, and the joint belongs to the later piece", () => {
    expect(locateLength(open, 25)).toEqual({ index: 0, t: 0.25 });
    expect(locateLength(open, 100)).toEqual({ index: 1, t: 0 });
    expect(locateLength(open, 125)).toEqual({ index: 1, t: 0.5 });
  });

  it("beyond its ends an open curve holds them and a closed one goes round", () => {
    expect(locateLength(open, -4)).toEqual({ index: 0, t: 0 });
    expect(locateLength(open, 999)).toEqual({ index: 1, t: 1 });
    expectPoint(frameAtLength(loop, loop.lengthMm + 30).at, [30, 0], 1e-6);
    expectPoint(frameAtLength(loop, -30).at, [0, 30], 1e-6);
    expect(locateLength(loop, loop.lengthMm)).toEqual({ index: loop.pieces.length - 1, t: 1 });
  });

  it("a frame carries point, unit tangent and curvature", () => {
    const { at, tangent, curvaturePerMm } = frameAtLength(loop, 80 + 5 * Math.PI);
    expectPoint(at, [80 + 20 * Math.SQRT1_2, 20 - 20 * Math.SQRT1_2]);
    expectPoint(tangent, [Math.SQRT1_2, Math.SQRT1_2], 1e-12);
    expect(curvaturePerMm).toBeCloseTo(1 / 20, 12);
  });

  it("steps of equal length along a curve are equally long", () => {
    let before = frameAtLength(loop, 0).at;
    for (let s = 0.01; s < loop.lengthMm; s += 0.01 * 97) {
      const { at } = frameAtLength(loop, s);
      before = frameAtLength(loop, s - 0.001).at;
      expect(Math.hypot(at[0] - before[0], at[1] - before[1])).toBeCloseTo(0.001, 8);
    }
  });
});

describe("nodes and the stretch between two", () => {
  it("a radiused node lies in the middle of its arc", () => {
    const place = nodePlace(loop, "b");
    expect(place).toEqual({ index: 2, t: 0 });
    expectPoint(startOfPiece(loop.pieces[2] ?? loop.pieces[0] ?? fail()), [
      80 + 20 * Math.SQRT1_2,
      20 - 20 * Math.SQRT1_2,
    ]);
  });

  it("the last node of an open curve is its end", () => {
    expect(nodePlace(open, "c")).toEqual({ index: 1, t: 1 });
    expect(nodePlace(open, "nobody")).toBeUndefined();
  });

  it("both ways between two nodes of a loop make the whole loop", () => {
    const there = subCurve(loop, "b", "d") ?? [];
    const back = subCurve(loop, "d", "b") ?? [];
    expect(totalLength(there) + totalLength(back)).toBeCloseTo(loop.lengthMm, 9);
    expectPoint(endOfPiece(there.at(-1) ?? fail()), [0, 100]);
    expect(there.map((piece) => piece.edgeId)).toEqual(["b", "b", "c"]);
    expect(back.map((piece) => piece.edgeId)).toEqual(["d", "a", "a"]);
  });

  it("from a node to itself is the whole loop from there", () => {
    expect(toCurve(subCurve(loop, "c", "c") ?? [], true).lengthMm).toBeCloseTo(loop.lengthMm, 9);
  });

  it("an open curve runs one way only", () => {
    expect(subCurve(open, "a", "c")).toEqual(open.pieces);
    expect(subCurve(open, "b", "c")).toEqual(open.pieces.slice(1));
    expect(subCurve(open, "c", "a")).toBeUndefined();
    expect(subCurve(open, "b", "b")).toBeUndefined();
    expect(subCurve(open, "a", "nobody")).toBeUndefined();
  });
});

function fail(): never {
  throw new Error("no such piece");
}
