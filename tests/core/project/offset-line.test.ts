import { EndType, inflatePathsD, JoinType } from "clipper2-ts";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { enclosedAreaMm2, nearestOnPiece, pointOnPiece } from "../../../core/curves/index.ts";
import { applyCommand, offsetLine, type Project, resolveLines } from "../../../core/project/index.ts";
import { oneSection, plan, rectangle, twoSections, withFence } from "./small-projects.ts";

const SEED = 20261125;
const line = { of: "item", itemId: "one" } as const;
const beside = (project: Project, distanceMm: number): Project =>
  applyCommand(project, { kind: "offset-line", line, distanceMm });
const curveOf = (project: Project, itemId = "one") => {
  const curve = resolveLines(project).plan[itemId];
  if (!curve) throw new Error(`${itemId} does not compile`);
  return curve;
};
const areaMm2 = (project: Project): number =>
  enclosedAreaMm2(curveOf(project).pieces.map((piece) => ({ piece, reversed: false })));

/** Outlines of six corners about a middle, some of them going inward. */
const hexagon = fc
  .array(fc.double({ min: 300, max: 600, noNaN: true }), { minLength: 6, maxLength: 6 })
  .map((radii) =>
    radii.map((radius, index) => {
      const angle = (index * Math.PI) / 3 + 0.1;
      return plan(`n${index}`, 1000 + radius * Math.cos(angle), 1000 + radius * Math.sin(angle));
    }),
  );

describe("a parallel", () => {
  it("has the area that an independent offset of the polygon has (clipper2-ts, mitred)", () => {
    fc.assert(
      fc.property(hexagon, fc.double({ min: -60, max: 60, noNaN: true }), (nodes, distanceMm) => {
        const project = oneSection(nodes);
        const polygon = nodes.map(({ x, y }) => ({ x, y }));
        const [expected] = inflatePathsD([polygon], distanceMm, JoinType.Miter, EndType.Polygon, 100, 8);
        const shoelace = (expected ?? []).reduce((sum, point, index, all) => {
          const next = all[(index + 1) % all.length] ?? point;
          return sum + (point.x * next.y - next.x * point.y) / 2;
        }, 0);
        expect(areaMm2(beside(project, distanceMm)) / Math.abs(shoelace)).toBeCloseTo(1, 5);
      }),
      { seed: SEED, numRuns: 60 },
    );
  });

  it("of a rectangle with round corners is exact: sides and radii grow together", () => {
    const project = oneSection(rectangle(0, 400, 100, 300).map((node) => ({ ...node, radiusMm: 40 })));
    const area = (w: number, h: number, r: number) => w * h - (4 - Math.PI) * r * r;
    expect(areaMm2(beside(project, 10))).toBeCloseTo(area(420, 220, 50), 6);
    expect(areaMm2(beside(project, -10))).toBeCloseTo(area(380, 180, 30), 6);
    expect(areaMm2(beside(project, -50))).toBeCloseTo(area(300, 100, 0), 6);
  });

  it("of curves keeps its distance all along, within the miss that it reports", () => {
    const project = oneSection([
      plan("a", 0, 100),
      plan("b", 800, 100, { next: "curve" }),
      plan("c", 700, 400, { next: "curve" }),
      plan("d", 100, 380),
    ]);
    for (const distanceMm of [15, -15]) {
      const result = offsetLine(project, line, distanceMm);
      expect(result.ok && result.value.missMm).toBeLessThan(0.02);
      const old = curveOf(project).pieces;
      const misses = curveOf(beside(project, distanceMm)).pieces.flatMap((piece) =>
        piece.kind !== "cubic"
          ? []
          : Array.from({ length: 41 }, (_, i) => {
              const point = pointOnPiece(piece, i / 40);
              const nearestMm = Math.min(...old.map((other) => nearestOnPiece(other, point).distanceMm));
              return Math.abs(nearestMm - 15);
            }),
      );
      expect(misses.length).toBeGreaterThan(0);
      expect(Math.max(...misses)).toBeLessThan(0.03);
    }
  });

  it("that has no room inside names the node and changes nothing", () => {
    const project = oneSection([
      plan("a", 0, 100),
      plan("b", 400, 100),
      plan("c", 400, 300),
      plan("d", 0, 300),
    ]);
    const result = offsetLine(project, line, -101);
    expect(result).toMatchObject({
      ok: false,
      problems: [{ kind: "parallel-does-not-fit", name: "One", place: { itemId: "one", nodeId: "b" } }],
    });
    expect(beside(project, -101)).toBe(project);
    expect(offsetLine(project, line, -99).ok).toBe(true);
  });

  it("over a neck that closes has no room either", () => {
    const neck = [
      [0, 100],
      [400, 100],
      [400, 180],
      [600, 180],
      [600, 100],
      [1000, 100],
      [1000, 300],
      [600, 300],
      [600, 220],
      [400, 220],
      [400, 300],
      [0, 300],
    ] as const;
    const project = oneSection(neck.map(([x, y], index) => plan(`n${index}`, x, y)));
    expect(offsetLine(project, line, -10).ok).toBe(true);
    expect(offsetLine(project, line, -30).ok).toBe(false);
  });

  it("of a fence lies outboard, with its lower edge under it", () => {
    const moved = applyCommand(withFence(), {
      kind: "offset-line",
      line: { of: "item", itemId: "fence" },
      distanceMm: 30,
    });
    expect(moved.items[1]).toMatchObject({
      line: {
        elements: [
          { x: 100, y: 130 },
          { x: 900, y: 130 },
        ],
      },
      lowerEdge: { nodes: [{ x: 100 }, { x: 900 }] },
    });
  });

  it("of what follows an edge has nodes of its own, and what follows it goes with it", () => {
    const two = { of: "item", itemId: "two" } as const;
    const freed = applyCommand(twoSections(), { kind: "offset-line", line: two, distanceMm: -20 });
    expect(curveOf(freed, "two").lengthMm).toBeCloseTo(2400 - 160, 6);
    const led = beside(twoSections(), 20);
    expect(areaMm2(led)).toBeCloseTo(1040 * 220, 6);
    expect(resolveLines(led).problems.filter(({ kind }) => kind === "unknown-reference")).toEqual([]);
  });
});
