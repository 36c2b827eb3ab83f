import { areaPathsD, FillRule, intersectD } from "clipper2-ts";
import { describe, expect, it } from "vitest";
import { type Layout, type PackingProblem, packWithin, verifyLayout } from "../../core/packing/index.ts";
import { readInstance } from "./layout/read-instance.ts";

/**
 * Open instances of the ESICUP working group's collection (github.com/ESICUP/datasets, CC0 1.0). The densities here
 * are floors for a few sweeps only; `npm run bench:layout` prints those of longer runs beside the published means.
 */
describe("open sets of the strip problem", () => {
  it.each([
    ["marques", 80],
    ["albano", 78],
    ["trousers", 75],
  ])("%s is laid without overlap at %i percent in 200 sweeps", (name, floor) => {
    const { problem, areaMm2 } = readInstance(name);
    const layout = packWithin(problem, 1, { kind: "sweeps", sweeps: 200 });
    expect(layout && verifyLayout(problem, layout)).toEqual([]);
    expect(layout && sharedArea(problem, layout)).toBeLessThan(areaMm2 * 1e-9);
    const sheet = layout?.sheets[0];
    const density = sheet === undefined ? 0 : (100 * areaMm2) / (sheet.widthMm * sheet.usedMm);
    expect(density).toBeGreaterThan(floor);
  });
});

/** Hopper & Turton 2001: rectangles cut from a strip without waste, so that the best length is known. */
describe("rectangles with a known best length", () => {
  it.each([
    ["hopper-turton-c1p1", 20, 1],
    ["hopper-turton-c1p2", 20, 1],
    ["hopper-turton-c2p1", 15, 1.05],
    ["hopper-turton-c2p2", 15, 1.05],
  ])("%s reaches its best length of %i times %d", (name, bestMm, factor) => {
    const { problem } = readInstance(name);
    const layout = packWithin(problem, 1, { kind: "sweeps", sweeps: 100 });
    expect(layout && verifyLayout(problem, layout)).toEqual([]);
    expect(layout?.sheets[0]?.usedMm).toBeLessThanOrEqual(bestMm * factor);
  });
});

/** The area that pieces of a layout share, by clipper2-ts, mm². */
function sharedArea({ pieces }: PackingProblem, { placements }: Layout): number {
  const placed = placements.flatMap(({ pieceId, angleRad, x, y }) => {
    const outline = pieces.find(({ id }) => id === pieceId)?.outline ?? [];
    const [cos, sin] = [Math.cos(angleRad), Math.sin(angleRad)];
    return [[outline.map((p) => ({ x: p.x * cos - p.y * sin + x, y: p.x * sin + p.y * cos + y }))]];
  });
  return placed.reduce(
    (sum, first, index) =>
      sum +
      placed
        .slice(index + 1)
        .reduce(
          (total, second) => total + Math.abs(areaPathsD(intersectD(first, second, FillRule.NonZero, 4))),
          0,
        ),
    0,
  );
}
