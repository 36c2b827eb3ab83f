import { describe, expect, it } from "vitest";
import { divideLoops, type Island } from "../../../core/cutting/index.ts";
import { loopsAreaMm2, polygonOfLoop } from "../../../core/patterns/index.ts";
import { loopThrough, rectangle, smoothLoop } from "./flat-parts.ts";

const areas = (islands: readonly Island[]) => islands.map((island) => Math.round(loopsAreaMm2(island)));

describe("a straight cut", () => {
  it("keeps the labels of the edges and adds one seam edge to each side", () => {
    const { below, above } = divideLoops([rectangle(100, 40)], "u", 30, "seam:x");
    expect(areas(below)).toEqual([1200]);
    expect(areas(above)).toEqual([2800]);
    const ids = (islands: readonly Island[]) =>
      islands.flat().flatMap(({ edges }) => edges.map(({ edgeId }) => edgeId));
    expect(ids(below).sort()).toEqual(["e0", "e2", "e3", "seam:x"]);
    expect(ids(above).sort()).toEqual(["e0", "e1", "e2", "seam:x"]);
  });

  it("leaves closed loops whose edges start where the one before ends", () => {
    const round = smoothLoop(60, (turn) => [50 * Math.cos(turn), 30 * Math.sin(turn)]);
    const { below, above } = divideLoops([round], "v", 7);
    for (const { edges } of [...below, ...above].flat()) {
      for (const [i, edge] of edges.entries()) {
        const before = edges[(i + edges.length - 1) % edges.length];
        expect(before?.points[before.points.length - 1]).toEqual(edge.points[0]);
      }
    }
  });

  it("parts a comb into its teeth", () => {
    const comb = loopThrough([
      [0, 0],
      [50, 0],
      [50, 30],
      [40, 30],
      [40, 10],
      [30, 10],
      [30, 30],
      [20, 30],
      [20, 10],
      [10, 10],
      [10, 30],
      [0, 30],
    ]);
    const { below, above } = divideLoops([comb], "v", 20);
    expect(areas(above)).toEqual([100, 100, 100]);
    expect(areas(below)).toEqual([800]);
  });

  it("opens a hole that it runs through and keeps one that it misses with its own side", () => {
    const hole = (u: number) =>
      smoothLoop(200, (turn) => [u + 5 * Math.cos(turn), 20 + 5 * Math.sin(turn)], "hole");
    const { below, above } = divideLoops([rectangle(100, 40), hole(30.01), hole(70)], "u", 30);
    expect(below.map((island) => island.length)).toEqual([1]);
    expect(above.map((island) => island.length)).toEqual([2]);
    const wholeMm2 = loopsAreaMm2([rectangle(100, 40), hole(30.01), hole(70)]);
    const sumMm2 = [...below, ...above].reduce((sum, island) => sum + loopsAreaMm2(island), 0);
    expect(Math.abs(sumMm2 / wholeMm2 - 1)).toBeLessThan(1e-12);
  });

  it("is sound through corners that lie exactly on it", () => {
    const arrow = loopThrough([
      [0, 0],
      [50, -20],
      [100, 0],
      [50, 20],
    ]);
    const { below, above } = divideLoops([arrow], "v", 0);
    expect(areas(below)).toEqual([1000]);
    expect(areas(above)).toEqual([1000]);
    const touching = loopThrough([
      [0, 0],
      [60, 0],
      [60, 40],
      [30, 20],
      [0, 40],
    ]);
    const cut = divideLoops([touching], "v", 20);
    expect(areas(cut.below)).toEqual([1200]);
    expect(areas(cut.above)).toEqual([600]);
    for (const island of [...cut.below, ...cut.above]) {
      for (const loop of island) expect(polygonOfLoop(loop).length).toBeGreaterThanOrEqual(3);
    }
  });

  it("changes nothing when it misses", () => {
    const loop = rectangle(100, 40);
    expect(divideLoops([loop], "u", 200)).toEqual({ below: [[loop]], above: [] });
    expect(divideLoops([loop], "u", -1)).toEqual({ below: [], above: [[loop]] });
  });
});
