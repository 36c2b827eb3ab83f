import { describe, expect, it } from "vitest";
import { applyCommand, type Grip, type Project } from "../../../core/project/index.ts";
import { planJoin, planSplit } from "../../../web/edit/split-and-join.ts";
import { oneSection, plan, twoSections, withFence } from "../../core/project/small-projects.ts";

const line = (itemId: string) => ({ of: "item", itemId }) as const;
const node = (itemId: string, nodeId: string): Grip => ({ line: line(itemId), nodeId });
const done = (project: Project, planned: ReturnType<typeof planJoin>): Project => {
  if (!planned.ok) throw new Error(planned.words);
  return planned.commands.reduce(applyCommand, project);
};
/** An outline like an L: not all of its corners see each other. */
const angled = (): Project =>
  oneSection([
    plan("a", 0, 100),
    plan("b", 900, 100),
    plan("c", 900, 300),
    plan("d", 300, 300),
    plan("e", 300, 700),
    plan("f", 0, 700),
  ]);

describe("splitting what is chosen", () => {
  it("a fence is split in the middle of its chosen edge, and both halves are chosen", () => {
    const selection = { kind: "item", itemId: "fence", edgeId: "a" } as const;
    const planned = planSplit(withFence(), [{ line: line("fence") }], selection);
    const after = done(withFence(), planned);
    expect(after.items.filter(({ kind }) => kind === "fence")).toMatchObject([
      { id: "fence", line: { elements: [{ x: 100 }, { x: 500 }] } },
      { id: "f1", number: 2, name: "Fence 2", line: { elements: [{ x: 500 }, { x: 900 }] } },
    ]);
    expect(planned.ok && planned.chosen).toHaveLength(2);
  });

  it("a section is cut from one chosen node to the other", () => {
    const planned = planSplit(angled(), [node("one", "d"), node("one", "a")], undefined);
    expect(done(angled(), planned).items).toHaveLength(2);
  });

  it("a cut that would leave the outline is refused, and so are neighbours", () => {
    const words = [
      planSplit(angled(), [node("one", "c"), node("one", "e")], undefined),
      planSplit(angled(), [node("one", "c"), node("one", "d")], undefined),
      planSplit(angled(), [node("one", "c")], undefined),
    ].map((planned) => (planned.ok ? "" : planned.words));
    expect(words[0]).toMatch(/would leave the outline/);
    expect(words[1]).toMatch(/cannot be split there/);
    expect(words[2]).toMatch(/two nodes of a section/);
  });
});

describe("joining what is chosen", () => {
  it("two sections that share an edge become the one that was followed", () => {
    const grips = [{ line: line("two") }, { line: line("one") }];
    const planned = planJoin(twoSections(), grips);
    expect(done(twoSections(), planned).items).toMatchObject([{ id: "one" }]);
    expect(planned.ok && planned.chosen).toEqual([{ line: line("one") }]);
  });

  it("of two unlike things is refused in words", () => {
    const planned = planJoin(withFence(), [{ line: line("one") }, { line: line("fence") }]);
    expect(!planned.ok && planned.words).toMatch(/not one with the other/);
  });
});
