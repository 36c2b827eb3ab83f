import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Path, pointOnPiece, splitSegment } from "../../../core/curves/index.ts";
import {
  closedPath,
  curveNode,
  curveOf,
  distanceToCurve,
  node,
  nodesOfPath,
  openPath,
  SEED,
  UNMOVED_MM,
} from "./drawn-paths.ts";

const mixed = closedPath(
  node("a", [0, 0], { radiusMm: 30 }),
  node("b", [400, 10], { radiusMm: 40 }),
  node("c", [420, 180]),
  curveNode("d", [380, 260], { meets: "smooth" }),
  curveNode("e", [240, 300]),
  curveNode("f", [150, 220]),
  node("g", [20, 200], { tangentInRad: 3 }),
);
const loop = closedPath(
  curveNode("a", [0, 0]),
  curveNode("b", [300, -40]),
  curveNode("c", [420, 160]),
  curveNode("d", [180, 260]),
);
const openRun = openPath(
  curveNode("a", [0, 0], { tangentOutRad: 1 }),
  curveNode("b", [100, 50]),
  node("c", [230, 40]),
);

describe("splitting a segment", () => {
  it("moves nothing, on lines and curves, in loops and open lines", () => {
    const paths: [Path, number][] = [
      [mixed, 7],
      [loop, 4],
      [openRun, 2],
    ];
    fc.assert(
      fc.property(
        fc.constantFrom(...paths),
        fc.nat(6),
        fc.double({ min: 0.02, max: 0.98, noNaN: true }),
        ([path, count], pick, t) => {
          const after = nodesOfPath(path)[pick % count]?.id ?? "a";
          const split = splitSegment(path, after, t, "new");
          if (split === path) return;
          expect(nodesOfPath(split).map(({ id }) => id)).toContain("new");
          expectSameShape(path, split);
        },
      ),
      { seed: SEED, numRuns: 60 },
    );
  });

  it("may be done again and again in the same place", () => {
    let path: Path = loop;
    for (let i = 0; i < 12; i++) path = splitSegment(path, i === 0 ? "d" : `n${i - 1}`, 0.4, `n${i}`);
    expect(path.elements).toHaveLength(16);
    expectSameShape(loop, path);
  });

  it("puts the node at its place along the segment and keeps the ids on both sides", () => {
    const line = splitSegment(mixed, "a", 0.25, "new");
    expect(nodesOfPath(line).map(({ id }) => id)).toEqual(["a", "new", "b", "c", "d", "e", "f", "g"]);
    expect(nodesOfPath(line)[1]?.at).toEqual([100, 2.5]);
    const curve = splitSegment(loop, "b", 0.25, "new");
    const piece = curveOf(loop).pieces[1];
    expect(piece && pointOnPiece(piece, 0.25)).toEqual(nodesOfPath(curve)[2]?.at);
  });

  it("splits the side that closes the loop at the end of the list", () => {
    const split = splitSegment(mixed, "g", 0.3, "new");
    expect(nodesOfPath(split).at(-1)?.id).toBe("new");
    expectSameShape(mixed, split);
  });

  it("is refused inside the arc of a neighbour's radius, and right beside it is not", () => {
    const path = closedPath(
      node("a", [0, 0], { radiusMm: 30 }),
      node("b", [100, 0]),
      node("c", [100, 100]),
      node("d", [0, 100]),
    );
    expect(splitSegment(path, "a", 0.29, "new")).toBe(path);
    expect(splitSegment(path, "d", 0.71, "new")).toBe(path);
    expectSameShape(path, splitSegment(path, "a", 0.31, "new"));
  });

  it("is refused at an end, beyond it, at no number, and where there is no segment", () => {
    for (const t of [0, 1, -1, 2, 1e-9, Number.NaN]) expect(splitSegment(mixed, "e", t, "new")).toBe(mixed);
    expect(splitSegment(mixed, "nobody", 0.5, "new")).toBe(mixed);
    expect(splitSegment(openRun, "c", 0.5, "new")).toBe(openRun);
  });
});

function expectSameShape(before: Path, after: Path): void {
  const [was, is] = [curveOf(before), curveOf(after)];
  expect(Math.abs(was.lengthMm - is.lengthMm)).toBeLessThan(UNMOVED_MM);
  for (const piece of is.pieces) {
    for (const t of [0, 0.23, 0.5, 0.81, 1]) {
      expect(distanceToCurve(was, pointOnPiece(piece, t))).toBeLessThan(UNMOVED_MM);
    }
  }
}
