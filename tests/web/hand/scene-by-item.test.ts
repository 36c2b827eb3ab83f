import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import {
  applyCommand,
  newOpening,
  newTransition,
  type PlanNode,
  type Project,
  readProject,
  resolveLines,
} from "../../../core/project/index.ts";
import { sceneByItem } from "../../../web/hand/scene-by-item.ts";
import { findLine, sceneOf } from "../../../web/tools/index.ts";

function demo(): Project {
  const read = readProject(readFileSync("web/examples/hill-climb-floor.json", "utf8"));
  if (!read.ok) throw new Error("The demo does not read.");
  return read.project;
}

const demoOpening: readonly PlanNode[] = [
  { kind: "node", id: "n1", x: 500, y: 100, next: "line" },
  { kind: "node", id: "n2", x: 700, y: 100, next: "curve" },
  { kind: "node", id: "n3", x: 600, y: 200, next: "line" },
];

const lineOf = (project: Project, itemId: string) => findLine(sceneByItem(project), { of: "item", itemId });

describe("the scene item by item", () => {
  it("shows what the whole document compiled at once shows", () => {
    const project = demo();
    expect(sceneByItem(project)).toEqual(sceneOf(project, resolveLines(project)));
  });

  it("a moved node makes a new line of its item and of what follows it, and leaves the others as they are", () => {
    const project = demo();
    const before = ["s1", "t1", "s2", "f1"].map((itemId) => lineOf(project, itemId));
    const moved = applyCommand(project, {
      kind: "move-node",
      line: { of: "item", itemId: "s1" },
      nodeId: "n3",
      to: [1420, 285],
    });
    const after = ["s1", "t1", "s2", "f1"].map((itemId) => lineOf(moved, itemId));
    expect(after.map((line, index) => line === before[index])).toEqual([false, false, true, true]);
    expect(sceneByItem(moved)).toEqual(sceneOf(moved, resolveLines(moved)));
  });

  it("a transition is drawn anew with the edge that it runs along, and neither it nor an opening with others", () => {
    const edges = {
      first: { kind: "stretch", edge: { itemId: "s1", fromNodeId: "n1", toNodeId: "n2", hand: "right" } },
      second: {
        kind: "free",
        nodes: [
          { id: "n1", x: 0, y: 900, z: 50, next: "line" },
          { id: "n2", x: 900, y: 900, z: 90, next: "curve" },
          { id: "n3", x: 1800, y: 900, z: 70, next: "line" },
        ],
      },
    } as const;
    const transition = newTransition({ id: "t9", number: 9, name: "", ...edges });
    const outline = { closed: true, elements: demoOpening };
    const opening = newOpening({ id: "o9", number: 9, name: "", ...outline });
    const project = [
      { kind: "add-transition", transition } as const,
      { kind: "add-opening", opening } as const,
    ].reduce(applyCommand, demo());
    expect(sceneByItem(project)).toEqual(sceneOf(project, resolveLines(project)));
    const openingLine = { of: "opening", openingId: "o9" } as const;
    const move = (itemId: string, nodeId: string, to: readonly [number, number]) =>
      applyCommand(project, { kind: "move-node", line: { of: "item", itemId }, nodeId, to });
    const before = [lineOf(project, "t9"), findLine(sceneByItem(project), openingLine)];
    const elsewhere = move("f1", "n1", [400, 400]);
    expect([lineOf(elsewhere, "t9"), findLine(sceneByItem(elsewhere), openingLine)]).toEqual(before);
    expect(lineOf(elsewhere, "t9")).toBe(before[0]);
    const along = move("s1", "n2", [10, 290]);
    expect(lineOf(along, "t9")).not.toBe(before[0]);
    expect(findLine(sceneByItem(along), openingLine)).toBe(before[1]);
    expect(sceneByItem(along)).toEqual(sceneOf(along, resolveLines(along)));
  });

  it("a section whose profile is taken away is shown as broken, and whole again when it is back", () => {
    const project = demo();
    const without = { ...project, profiles: [] };
    expect(lineOf(project, "s1")?.broken).toBe(false);
    expect(lineOf(without, "s1")?.broken).toBe(true);
    expect(lineOf(project, "s1")?.broken).toBe(false);
  });
});
