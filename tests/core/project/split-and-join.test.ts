import { describe, expect, it } from "vitest";
import { enclosedAreaMm2, nearestOnPiece, pointOnPiece } from "../../../core/curves/index.ts";
import {
  applyCommand,
  checkDocument,
  type Fence,
  joinItems,
  newFence,
  type Project,
  planLineOf,
  resolveLines,
} from "../../../core/project/index.ts";
import { oneSection, plan, rectangle, side, twoSections, withFence } from "./small-projects.ts";

const half = { id: "s9", number: 9, name: "Half" };
const split = (project: Project, itemId: string, ...nodeIds: readonly string[]): Project =>
  applyCommand(project, { kind: "split-item", itemId, nodeIds, half });
const problemsOf = (project: Project) => [...checkDocument(project), ...resolveLines(project).problems];
const curveOf = (project: Project, itemId: string) => {
  const curve = resolveLines(project).plan[itemId];
  if (!curve) throw new Error(`${itemId} does not compile`);
  return curve;
};
const areaMm2 = (project: Project, itemId: string): number =>
  enclosedAreaMm2(curveOf(project, itemId).pieces.map((piece) => ({ piece, reversed: false })));
const fenceOf = (project: Project, itemId: string): Fence => {
  const item = project.items.find(({ id }) => id === itemId);
  if (item?.kind !== "fence") throw new Error(`${itemId} is no fence`);
  return item;
};

const hexagon = [
  plan("a", 0, 100),
  plan("b", 500, 60),
  plan("c", 1000, 100),
  plan("d", 1000, 300),
  plan("e", 500, 380),
  plan("f", 0, 300),
];

describe("a section that is split", () => {
  it("is two that share the cut as one edge, and cover what the one did", () => {
    const project = oneSection(hexagon);
    const cut = split(project, "one", "b", "e");
    expect(problemsOf(cut)).toEqual([]);
    expect(areaMm2(cut, "one") + areaMm2(cut, "s9")).toBeCloseTo(areaMm2(project, "one"), 6);
    expect(Object.values(resolveLines(cut).follows)).toMatchObject([{ itemId: "one" }]);
    const moved = applyCommand(cut, {
      kind: "move-node",
      line: { of: "item", itemId: "one" },
      nodeId: "e",
      to: [540, 380],
    });
    const dragged = oneSection(hexagon.map((node) => (node.id === "e" ? { ...node, x: 540 } : node)));
    expect(areaMm2(moved, "one") + areaMm2(moved, "s9")).toBeCloseTo(areaMm2(dragged, "one"), 6);
    expect(problemsOf(moved)).toEqual([]);
  });

  it("keeps the curve of an edge to where the cut is, and its direction there", () => {
    const round = hexagon.map((node) =>
      node.id === "d" || node.id === "e" ? { ...node, next: "curve" as const } : node,
    );
    const project = oneSection(round);
    const cut = split(project, "one", "b", "e");
    const farthest = (itemId: string) =>
      Math.max(
        ...curveOf(cut, itemId).pieces.flatMap((piece) =>
          Array.from({ length: 21 }, (_, i) => {
            const [x, y] = pointOnPiece(piece, i / 20);
            return Math.min(
              ...curveOf(project, "one").pieces.map((other) => nearestOnPiece(other, [x, y]).distanceMm),
              Math.abs(x - 500),
            );
          }),
        ),
      );
    // Each half is a spline of its own, and differs by the little that the bend on the other side did.
    expect(farthest("one")).toBeLessThan(0.5);
    expect(farthest("s9")).toBeLessThan(0.5);
  });

  it("leads what followed its edges to the half that has them now", () => {
    const cut = split(twoSections(), "one", "a", "c");
    expect(problemsOf(cut)).toEqual([]);
    expect(areaMm2(cut, "two")).toBeCloseTo(areaMm2(twoSections(), "two"), 6);
    expect(planLineOf(cut.items.find(({ id }) => id === "two") ?? never()).elements[0]).toMatchObject({
      kind: "follow",
      edge: { itemId: "s9" },
    });
  });

  it("between neighbours, or at a node that is not there, is not split at all", () => {
    const project = oneSection(hexagon);
    expect(split(project, "one", "a", "b")).toBe(project);
    expect(split(project, "one", "a", "f")).toBe(project);
    expect(split(project, "one", "a", "z")).toBe(project);
  });

  it("and joined again is what it was", () => {
    const project = oneSection(hexagon);
    const joined = joinItems(split(project, "one", "b", "e"), "s9", "one");
    if (!joined.ok) throw new Error(joined.reason);
    expect(joined.keptId).toBe("one");
    expect(areaMm2(joined.project, "one")).toBeCloseTo(areaMm2(project, "one"), 6);
    expect(curveOf(joined.project, "one").lengthMm).toBeCloseTo(curveOf(project, "one").lengthMm, 6);
    expect(problemsOf(joined.project)).toEqual([]);
  });
});

describe("a fence that is split", () => {
  const bent = (): Project => {
    const project = withFence();
    const items = project.items.map((item) =>
      item.kind === "fence"
        ? {
            ...item,
            line: {
              closed: false,
              elements: [plan("a", 100, 100), plan("m", 400, 160), plan("b", 900, 100)],
            },
            lowerEdge: { kind: "heights" as const, nodes: [side("l", 100, 20), side("r", 900, 28)] },
          }
        : item,
    );
    return { ...project, items };
  };

  it("is two, each with its share of the lower edge", () => {
    const cut = split(bent(), "fence", "m");
    expect(fenceOf(cut, "fence").lowerEdge).toMatchObject({
      nodes: [
        { x: 100, z: 20 },
        { x: 400, z: 23 },
      ],
    });
    expect(fenceOf(cut, "s9").lowerEdge).toMatchObject({
      nodes: [
        { x: 400, z: 23 },
        { x: 900, z: 28 },
      ],
    });
    expect(curveOf(cut, "fence").lengthMm + curveOf(cut, "s9").lengthMm).toBeCloseTo(
      curveOf(bent(), "fence").lengthMm,
      9,
    );
    expect(problemsOf(cut)).toEqual([]);
  });

  it("with depths has them along each half's own length", () => {
    const project = withFence();
    const deep = newFence({
      id: "deep",
      number: 2,
      name: "Deep",
      elements: [plan("a", 0, 50), plan("m", 300, 50), plan("b", 1000, 50)],
    });
    const depths = {
      kind: "depths" as const,
      nodes: [
        { id: "d1", alongMm: 0, depthMm: 10 },
        { id: "d2", alongMm: 1000, depthMm: 60 },
      ],
    };
    const items = [...project.items, { ...deep, lowerEdge: depths }];
    const cut = split({ ...project, items }, "deep", "m");
    expect(fenceOf(cut, "deep").lowerEdge).toMatchObject({
      nodes: [{ depthMm: 10 }, { alongMm: 300, depthMm: 25 }],
    });
    expect(fenceOf(cut, "s9").lowerEdge).toMatchObject({
      nodes: [
        { alongMm: 0, depthMm: 25 },
        { alongMm: 700, depthMm: 60 },
      ],
    });
    const joined = joinItems(cut, "deep", "s9");
    expect(joined.ok && fenceOf(joined.project, "deep").lowerEdge).toMatchObject({
      nodes: [
        { alongMm: 0, depthMm: 10 },
        { alongMm: 300, depthMm: 25 },
        { alongMm: 1000, depthMm: 60 },
      ],
    });
  });

  it("and joined again is what it was, whichever is named first", () => {
    for (const [first, second] of [
      ["fence", "s9"],
      ["s9", "fence"],
    ] as const) {
      const joined = joinItems(split(bent(), "fence", "m"), first, second);
      if (!joined.ok) throw new Error(joined.reason);
      expect(curveOf(joined.project, first).lengthMm).toBeCloseTo(curveOf(bent(), "fence").lengthMm, 9);
      expect(fenceOf(joined.project, first).lowerEdge).toMatchObject({
        nodes: [
          { x: 100, z: 20 },
          { x: 400, z: 23 },
          { x: 900, z: 28 },
        ],
      });
      expect(problemsOf(joined.project)).toEqual([]);
    }
  });
});

describe("what cannot be joined", () => {
  it("says why", () => {
    const fences = withFence();
    expect(joinItems(fences, "one", "fence")).toEqual({ ok: false, reason: "not two of a kind" });
    const apart = oneSection(rectangle(0, 400, 0, 200));
    const [one] = apart.items;
    const both = { ...apart, items: [...apart.items, { ...(one ?? never()), id: "two", number: 2 }] };
    expect(joinItems(both, "one", "two")).toEqual({ ok: false, reason: "no shared edge" });
    const leaning = twoSections().items.map((item) =>
      item.id === "two" && item.kind === "section" ? { ...item, tiltRad: 0.1 } : item,
    );
    expect(joinItems({ ...twoSections(), items: leaning }, "one", "two")).toEqual({
      ok: false,
      reason: "different profile",
    });
  });

  it("two sections that share an edge are one, with the area of both", () => {
    const joined = joinItems(twoSections(), "one", "two");
    if (!joined.ok) throw new Error(joined.reason);
    expect(areaMm2(joined.project, "one")).toBeCloseTo(1000 * 400, 6);
    expect(problemsOf(joined.project)).toEqual([]);
  });
});

function never(): never {
  throw new Error("There is no such item.");
}
