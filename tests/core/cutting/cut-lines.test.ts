import { areaPathsD, differenceD, EndType, FillRule, inflatePathsD, JoinType } from "clipper2-ts";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cutLinesOf, cutStrips } from "../../../core/cutting/index.ts";
import type { FlatPoint } from "../../../core/foundation/index.ts";
import { wordProblem } from "../../../core/foundation/index.ts";
import { type FlatLoop, polygonOfLoop } from "../../../core/patterns/index.ts";
import { flatPart, loopThrough, rectangle, smoothLoop } from "./flat-parts.ts";
import { plainProject } from "./plain-project.ts";

const pathOf = (polygon: readonly FlatPoint[]) => polygon.map(({ u, v }) => ({ x: u, y: v }));
const finishedOf = (loops: readonly FlatLoop[]) => loops.map((loop) => pathOf(polygonOfLoop(loop)));

/** Area of the finished part that lies beyond the line to cut by, by the polygon library, mm². */
function undercutMm2(loops: readonly FlatLoop[], lines: readonly (readonly FlatPoint[])[]): number {
  return areaPathsD(differenceD(finishedOf(loops), lines.map(pathOf), FillRule.NonZero, 6));
}

/** A board of 200 by 100 with a notch from above, so wide and so deep. */
const notched = (widthMm: number, depthMm: number): FlatLoop =>
  loopThrough([
    [0, 0],
    [200, 0],
    [200, 100],
    [100 + widthMm / 2, 100],
    [100 + widthMm / 2, 100 - depthMm],
    [100 - widthMm / 2, 100 - depthMm],
    [100 - widthMm / 2, 100],
    [0, 100],
  ]);

describe("the lines to cut by", () => {
  it("keep a notch that the blade goes into", () => {
    const { linesMm, swallowed } = cutLinesOf([notched(12, 40)], () => 3);
    expect(swallowed).toEqual([]);
    expect(linesMm).toHaveLength(1);
    expect(linesMm[0]).toContainEqual({ u: 103, v: 63 });
  });

  it("name a notch that is narrower than the blade asks for, and do not cross themselves there", () => {
    const loops = [notched(5, 40)];
    const { linesMm, swallowed } = cutLinesOf(loops, () => 3);
    expect(swallowed.map(({ edgeId }) => edgeId)).toContain("e4");
    const grown = inflatePathsD(finishedOf(loops), 3, JoinType.Miter, EndType.Polygon, 4, 6);
    expect(areaPathsD(linesMm.map(pathOf))).toBeCloseTo(areaPathsD(grown), 1);
  });

  it("name a hole that closes over, and keep those that do not", () => {
    const hole = (radiusMm: number, atU: number) =>
      smoothLoop(60, (turn) => [atU + radiusMm * Math.cos(turn), 50 + radiusMm * Math.sin(turn)], "hole");
    const board = rectangle(200, 100);
    const open = cutLinesOf([board, hole(10, 60), hole(20, 140)], () => 4);
    expect(open.linesMm).toHaveLength(3);
    expect(open.swallowed).toEqual([]);
    const small = hole(3, 8);
    const closed = cutLinesOf([board, small, hole(20, 140)], () => 4);
    expect(closed.linesMm).toHaveLength(2);
    expect(closed.swallowed).toEqual(small.edges);
  });

  it("never take anything from the part, whatever its outline", () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 20, max: 100 }), { minLength: 5, maxLength: 24 }),
        fc.double({ min: 0.3, max: 12, noNaN: true }),
        (radii, byMm) => {
          const corners = radii.map((radius, i): readonly [number, number] => {
            const turn = (2 * Math.PI * i) / radii.length;
            return [radius * Math.cos(turn), radius * Math.sin(turn)];
          });
          const loops = [loopThrough(corners)];
          const { linesMm } = cutLinesOf(loops, () => byMm);
          expect(undercutMm2(loops, linesMm)).toBeLessThan(1e-3);
        },
      ),
      { seed: 41, numRuns: 200 },
    );
  });

  it("say so in words, once for a strip, and the strip is there", () => {
    const project = plainProject();
    const cutting = { ...project.cutting, tool: "saw" as const, kerfMm: 3, bladeSide: "part" as const };
    const { strips, problems } = cutStrips([flatPart([notched(5, 40)])], plainProject({ cutting }));
    expect(strips).toHaveLength(1);
    expect(problems.map(({ kind }) => kind)).toEqual(["cut-line-swallows"]);
    expect(problems.map(wordProblem).join()).toContain("narrower than twice the 3.0 mm");
  });
});
