import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { applyCommand, type Project, readProject, resolveLines } from "../../../core/project/index.ts";
import { sceneByItem } from "../../../web/board/scene-by-item.ts";
import { findLine, sceneOf } from "../../../web/tools/index.ts";

function demo(): Project {
  const read = readProject(readFileSync("web/examples/hill-climb-floor.json", "utf8"));
  if (!read.ok) throw new Error("The demo does not read.");
  return read.project;
}

const lineOf = (project: Project, itemId: string) => findLine(sceneByItem(project), { of: "item", itemId });

describe("the scene item by item", () => {
  it("shows what the whole document compiled at once shows", () => {
    const project = demo();
    expect(sceneByItem(project)).toEqual(sceneOf(project, resolveLines(project)));
  });

  it("a moved node makes a new line of its item and of what follows it, and leaves the others as they are", () => {
    const project = demo();
    const before = ["s1", "s2", "f1", "f2"].map((itemId) => lineOf(project, itemId));
    const moved = applyCommand(project, {
      kind: "move-node",
      line: { of: "item", itemId: "s1" },
      nodeId: "n3",
      to: [1420, 285],
    });
    const after = ["s1", "s2", "f1", "f2"].map((itemId) => lineOf(moved, itemId));
    expect(after.map((line, index) => line === before[index])).toEqual([false, false, true, true]);
    expect(sceneByItem(moved)).toEqual(sceneOf(moved, resolveLines(moved)));
  });

  it("a section whose profile is taken away is shown as broken, and whole again when it is back", () => {
    const project = demo();
    const without = { ...project, profiles: [] };
    expect(lineOf(project, "s1")?.broken).toBe(false);
    expect(lineOf(without, "s1")?.broken).toBe(true);
    expect(lineOf(project, "s1")?.broken).toBe(false);
  });
});
