import { describe, expect, it } from "vitest";
import { emptyProject, type Project } from "../../../core/project/index.ts";
import { beginGuide, followGuide, guideSteps, type Seen } from "../../../web/guide/guide-steps.ts";
import { oneSection, rectangle } from "../../core/project/small-projects.ts";

const empty = emptyProject({ id: "new", title: "New", issuedOn: "2026-01-01" });
const atRest: Seen = { project: empty, tool: "select", selection: undefined, stage: "draw" };
const drawn: Project = oneSection(rectangle(0, 600, 0, 200));
const typed: Project = oneSection(rectangle(0, 650, 0, 200));
const [a, b, c, d] = rectangle(0, 650, 0, 200);
const rounded: Project = oneSection([a, b, { ...c, radiusMm: 40 }, d]);

/** What a builder does, one thing after another, and the step that the guide then tells. */
const journey: readonly (readonly [told: string, seen: Seen])[] = [
  ["draw", { ...atRest, tool: "section" }],
  ["choose", { ...atRest, project: drawn, selection: { kind: "item", itemId: "one" } }],
  ["type", { ...atRest, project: drawn, selection: { kind: "item", itemId: "one", nodeId: "c" } }],
  ["round", { ...atRest, project: typed, selection: { kind: "item", itemId: "one", nodeId: "c" } }],
  ["flat", { ...atRest, project: rounded, selection: { kind: "item", itemId: "one", nodeId: "c" } }],
  ["print", { ...atRest, project: rounded, selection: { kind: "part", partId: "S1R" } }],
  ["finished", { ...atRest, project: rounded, stage: "print" }],
];

describe("the guided practice", () => {
  it("tells the next thing as each is done, from an empty page to paper", () => {
    let guide = beginGuide(atRest);
    expect(guideSteps[guide.step]?.name).toBe("take");
    for (const [told, seen] of journey) {
      guide = followGuide(guide, seen);
      expect(guideSteps[guide.step]?.name ?? "finished").toBe(told);
    }
  });

  it("waits while something else is done", () => {
    const guide = beginGuide(atRest);
    expect(followGuide(guide, { ...atRest, tool: "fence", stage: "stock" })).toBe(guide);
  });

  it("passes over what was done already: a section drawn by typed numbers needs no tool taken", () => {
    const guide = followGuide(beginGuide(atRest), { ...atRest, project: drawn });
    expect(guideSteps[guide.step]?.name).toBe("choose");
  });

  it("counts a number as typed only when it moves a node of the piece", () => {
    const chosen: Seen = { ...atRest, selection: { kind: "item", itemId: "one", nodeId: "c" } };
    const guide = followGuide(beginGuide(atRest), { ...chosen, project: drawn });
    expect(guideSteps[guide.step]?.name).toBe("type");
    const renamed: Project = { ...drawn, title: "Another name" };
    expect(followGuide(guide, { ...chosen, project: renamed })).toBe(guide);
  });
});
