import { describe, expect, it } from "vitest";
import { applyCommand, type Fence, newFence, type Project } from "../../../core/project/index.ts";
import { depthAtStation } from "../../../web/tools/index.ts";
import { contextOf, trayWithSection, workWith } from "./bench-of-tools.ts";

function trayWithFence(lowerEdge: Fence["lowerEdge"]): Project {
  const fence = newFence({
    id: "f1",
    number: 1,
    name: "Fence 1",
    elements: [
      { kind: "node", id: "a", x: 100, y: 150, next: "line" },
      { kind: "node", id: "b", x: 900, y: 390, next: "line" },
    ],
  });
  return applyCommand(trayWithSection(), { kind: "add-fence", fence: { ...fence, lowerEdge } });
}

const heights = trayWithFence({
  kind: "heights",
  nodes: [
    { kind: "node", id: "h1", x: 100, z: 20, next: "line" },
    { kind: "node", id: "h2", x: 900, z: 30, next: "line" },
  ],
});

function pulled(project: Project, xMm: number, depthMm: number): Fence["lowerEdge"] {
  const wanted = { fenceId: "f1", xMm, yMm: 150 + (xMm - 100) * 0.3, airZMm: 60, depthMm };
  const commands = depthAtStation(contextOf(workWith("select", project)), wanted);
  const item = commands.reduce(applyCommand, project).items.find(({ id }) => id === "f1");
  if (item?.kind !== "fence") throw new Error("no fence");
  return item.lowerEdge;
}

describe("a fence's tip pulled in the cross-section", () => {
  it("between nodes puts one in at the station, and leaves the others where they were", () => {
    const edge = pulled(heights, 400, 45);
    expect(edge.kind === "heights" && edge.nodes.map(({ x, z }) => [x, z])).toEqual([
      [100, 20],
      [400, 15],
      [900, 30],
    ]);
  });

  it("at a node's station moves that node, and pulled again still that one", () => {
    const edge = pulled(heights, 900.4, 45);
    expect(edge.kind === "heights" && edge.nodes.map(({ x, z }) => [x, z])).toEqual([
      [100, 20],
      [900, 15],
    ]);
    const once = pulled(heights, 400, 45);
    const twice = pulled(trayWithFence(once), 400, 50);
    expect(twice.kind === "heights" && twice.nodes.map(({ z }) => z)).toEqual([20, 10, 30]);
  });

  it("of depths is set by length along the fence", () => {
    const depths = trayWithFence({
      kind: "depths",
      nodes: [
        { id: "d1", alongMm: 0, depthMm: 12 },
        { id: "d2", alongMm: 800, depthMm: 40 },
      ],
    });
    const edge = pulled(depths, 500, 33);
    // 400 mm rearward and 120 mm out.
    expect(edge.kind === "depths" && edge.nodes.map(({ alongMm, depthMm }) => [alongMm, depthMm])).toEqual([
      [0, 12],
      [expect.closeTo(Math.hypot(400, 120), 2), 33],
      [800, 40],
    ]);
  });

  it("is never pulled through its sheet, and where no fence comes by nothing happens", () => {
    const edge = pulled(heights, 900, -5);
    expect(edge.kind === "heights" && edge.nodes.at(-1)?.z).toBe(59);
    expect(
      depthAtStation(contextOf(workWith("select", heights)), {
        fenceId: "f1",
        xMm: 2000,
        yMm: 0,
        airZMm: 60,
        depthMm: 5,
      }),
    ).toEqual([]);
  });
});
