import { afterEach, describe, expect, it } from "vitest";
import { designTray } from "../../../core/design.ts";
import { applyCommand, newTransition, type Project, resolveLines } from "../../../core/project/index.ts";
import { freeEdgeAlong } from "../../../web/board/free-edge-along.ts";
import { useDesign } from "../../../web/stores/index.ts";
import { trayWithSection } from "../tools/bench-of-tools.ts";

/** A section that rises from z 60 at x 500 by a tenth of the way from there, and a transition at its outer edge. */
function trayWithRamp(): Project {
  const line = { of: "profile", profileId: "p1" } as const;
  return [
    { kind: "append-node", line, node: { kind: "node", id: "n3", x: 1500, z: 160, next: "line" } } as const,
    { kind: "move-node", line, nodeId: "n2", to: [500, 60] } as const,
    {
      kind: "add-transition",
      transition: newTransition({
        id: "t1",
        number: 1,
        name: "",
        first: { kind: "stretch", edge: { itemId: "s1", fromNodeId: "n3", toNodeId: "n4", hand: "right" } },
        second: {
          kind: "free",
          nodes: [
            { id: "n1", x: 0, y: 600, z: 60, next: "line" },
            { id: "n2", x: 1000, y: 600, z: 110, next: "line" },
          ],
        },
      }),
    } as const,
  ].reduce(applyCommand, trayWithSection());
}

describe("an edge that is given nodes of its own", () => {
  afterEach(() => useDesign.setState({ design: undefined }));

  it("runs where the section's edge ran, at the heights of its surface, with names that the other edge does not use", () => {
    const project = trayWithRamp();
    useDesign.setState({ design: designTray(project) });
    const nodes = freeEdgeAlong(project, "t1", "first") ?? [];
    expect(nodes.length).toBeGreaterThan(2);
    for (const { x, y, z } of nodes) {
      expect(y).toBe(400);
      expect(z).toBeCloseTo(60 + Math.max(0, x - 500) / 10, 3);
    }
    expect([nodes[0]?.x, nodes.at(-1)?.x]).toEqual([1000, 0]);
    expect(nodes.map(({ id }) => id)).not.toContain("n1");
    const freed = applyCommand(project, {
      kind: "change-transition",
      itemId: "t1",
      changes: { first: { kind: "free", nodes } },
    });
    expect(resolveLines(freed).problems).toEqual([]);
  });

  it("is left as it is where no surface is known", () => {
    expect(freeEdgeAlong(trayWithRamp(), "t1", "first")).toBeUndefined();
  });
});
