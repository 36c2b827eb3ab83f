import { describe, expect, it } from "vitest";
import { type Project, resolveLines } from "../../../../core/project/index.ts";
import {
  describeDrawing,
  describeSelection,
  nameOfSelection,
  type Selection,
  sceneOf,
} from "../../../../web/tools/index.ts";
import { twoSections, withFence } from "../../../core/project/small-projects.ts";
import { readExample } from "../../../read-example.ts";

const inWords = (project: Project, selection: Selection | undefined) =>
  describeSelection(project, sceneOf(project, resolveLines(project)), selection);

describe("the drawing in words", () => {
  it("tells a rectangle's edges, its length by its width, its area, its profile and how low it comes", () =>
    expect(inWords(twoSections(), { kind: "item", itemId: "one" })).toBe(
      "Section S1 One: closed outline of 4 nodes, 4 straight edges, 1000.0 by 200.0 mm, " +
        "from x 0.0 to 1000.0, 0.20 m². Profile Flat, lowest 50.0 mm at x 0.0.",
    ));

  it("names what is followed, from node to node", () => {
    const words = inWords(twoSections(), { kind: "item", itemId: "two" });
    expect(words).toContain("2 nodes, 3 straight and 1 following edges");
    expect(words).toMatch(/Follows One from node c to d\.$/i);
  });

  it("tells how low a fence comes and what it is seated on", () =>
    expect(inWords(withFence(), { kind: "item", itemId: "fence" })).toMatch(
      /^Fence F1 Fence: line of 2 nodes, 1 straight edge, .*Lower edge of 2 nodes, lowest 20\.0 mm at x 100\.0\. Seated on/,
    ));

  it("tells a chosen node's place before the thing it belongs to", () =>
    expect(inWords(twoSections(), { kind: "item", itemId: "one", nodeId: "c" })).toMatch(
      /^Node c at x 1000\.0, y 200\.0 mm\. Section S1/i,
    ));

  it("has a paragraph for every item, opening and profile of the demo", () => {
    const project = readExample("hill-climb-floor");
    const words = describeDrawing(project, sceneOf(project, resolveLines(project)));
    expect(words.length).toBe(project.items.length + project.openings.length + project.profiles.length);
    expect(words.join("\n")).not.toMatch(/undefined|NaN|cannot/);
  });

  it("says nothing of ribs, nor of what is no longer there", () => {
    expect(inWords(twoSections(), { kind: "rib", ribId: "A1" })).toBeUndefined();
    expect(inWords(twoSections(), { kind: "item", itemId: "gone" })).toBeUndefined();
    expect(nameOfSelection(twoSections(), undefined)).toBeUndefined();
    expect(nameOfSelection(twoSections(), { kind: "item", itemId: "one" })).toBe("One");
  });
});
