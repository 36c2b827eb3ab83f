import { describe, expect, it } from "vitest";
import { applyCommand, type Command, newFence, type Project } from "../../../../core/project/index.ts";
import { type Dimension, dimensionsOf, type Selection, totalLength } from "../../../../web/tools/index.ts";
import { contextOf, nodesOf, trayWithSection, workWith } from "../bench-of-tools.ts";

const contextWith = (project: Project, selection: Selection) => ({
  ...contextOf(workWith("select", project, selection)),
  heightOver: () => 60,
});
const shown = (project: Project, selection: Selection): readonly Dimension[] =>
  dimensionsOf(contextWith(project, selection));

function typed(project: Project, selection: Selection, id: string, valueMm: number): Project {
  const edit = shown(project, selection)
    .find((one) => one.id === id)
    ?.edit?.(valueMm);
  if (!edit?.ok) throw new Error(edit?.why ?? `no dimension ${id}`);
  return edit.commands.reduce(applyCommand, project);
}

const FLOOR: Selection = { kind: "item", itemId: "s1" };
const change = (project: Project, command: Command): Project => applyCommand(project, command);
const line = { of: "item", itemId: "s1" } as const;

describe("dimensions of what is chosen", () => {
  it("of a rectangle its four sides, and once round", () => {
    expect(shown(trayWithSection(), FLOOR).map(({ id, valueMm }) => [id, valueMm])).toEqual([
      ["length/n1", 1000],
      ["length/n2", 300],
      ["length/n3", 1000],
      ["length/n4", 300],
    ]);
    expect(totalLength(contextWith(trayWithSection(), FLOOR))?.valueMm).toBe(2600);
  });

  it("point out of the outline", () => {
    expect(shown(trayWithSection(), FLOOR).map(({ outward }) => outward.map((one) => one + 0))).toEqual([
      [0, -1],
      [1, 0],
      [0, 1],
      [-1, 0],
    ]);
  });

  it("a typed length moves the end node along the edge; the others stay", () => {
    const skewed = change(trayWithSection(), { kind: "move-node", line, nodeId: "n3", to: [1300, 500] });
    // From (1000, 100) to (1300, 500) are 500 mm in the direction 3 : 4.
    expect(nodesOf(typed(skewed, FLOOR, "length/n2", 250), "s1")).toEqual([
      [0, 100],
      [1000, 100],
      [1150, 300],
      [0, 400],
    ]);
  });

  it("a length over the centre line or of nothing is refused, and says why", () => {
    const dimension = shown(trayWithSection(), FLOOR).find(({ id }) => id === "length/n4");
    expect(dimension?.edit?.(500)).toEqual({
      ok: false,
      why: "That would take the node over the centre line.",
    });
    expect(dimension?.edit?.(0)).toEqual({ ok: false, why: "A length is more than 0." });
  });

  it("a node is measured from station 0 and from the centre line, and typed", () => {
    const node: Selection = { ...FLOOR, nodeId: "n3" };
    const found = shown(trayWithSection(), node).filter(({ kind }) => kind === "axis");
    expect(found.map(({ id, valueMm }) => [id, valueMm])).toEqual([
      ["x/n3", 1000],
      ["y/n3", 400],
    ]);
    expect(nodesOf(typed(trayWithSection(), node, "y/n3", 450), "s1")[2]).toEqual([1000, 450]);
  });

  it("a radius is typed, and 0 makes the corner sharp", () => {
    const round = change(trayWithSection(), {
      kind: "change-node",
      line,
      nodeId: "n3",
      changes: { radiusMm: 80 },
    });
    expect(shown(round, FLOOR).find(({ id }) => id === "radius/n3")?.valueMm).toBe(80);
    const wider = typed(round, FLOOR, "radius/n3", 120);
    expect(shown(wider, FLOOR).find(({ id }) => id === "radius/n3")?.valueMm).toBe(120);
    expect(shown(typed(round, FLOOR, "radius/n3", 0), FLOOR).some(({ kind }) => kind === "radius")).toBe(
      false,
    );
  });

  it("a curve is as long as was typed", () => {
    const bent = change(trayWithSection(), {
      kind: "change-node",
      line,
      nodeId: "n2",
      changes: { next: "curve", tangentOutRad: 0.9 },
    });
    const curved = shown(bent, FLOOR).find(({ id }) => id === "length/n2");
    expect(curved?.kind).toBe("arc");
    expect(curved?.valueMm).toBeGreaterThan(300);
    const longer = typed(bent, FLOOR, "length/n2", 400);
    expect(shown(longer, FLOOR).find(({ id }) => id === "length/n2")?.valueMm).toBeCloseTo(400, 4);
    expect(nodesOf(longer, "s1")[2]?.[0]).toBeCloseTo(1000, 6);
  });

  it("a fence shows how far it hangs below the sheet; a typed depth moves that node alone", () => {
    const fence = {
      ...newFence({
        id: "f1",
        number: 1,
        name: "Fence 1",
        elements: [
          { kind: "node", id: "a", x: 100, y: 250, next: "line" },
          { kind: "node", id: "b", x: 900, y: 250, next: "line" },
        ],
      }),
      lowerEdge: {
        kind: "heights",
        nodes: [
          { kind: "node", id: "h1", x: 100, z: 20, next: "line" },
          { kind: "node", id: "h2", x: 900, z: 25, next: "line" },
        ],
      },
    } as const;
    const project = change(trayWithSection(), { kind: "add-fence", fence });
    const chosen: Selection = { kind: "item", itemId: "f1" };
    const depths = shown(project, chosen).filter(({ id }) => id.startsWith("depth/"));
    expect(depths.map(({ valueMm }) => valueMm)).toEqual([40, 35]);
    const deeper = typed(project, chosen, "depth/h2", 42);
    const item = deeper.items.find(({ id }) => id === "f1");
    expect(
      item?.kind === "fence" && item.lowerEdge.kind === "heights" && item.lowerEdge.nodes.map(({ z }) => z),
    ).toEqual([20, 18]);
  });
});
