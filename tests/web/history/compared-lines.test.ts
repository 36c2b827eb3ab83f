import { expect, it } from "vitest";
import { applyCommand } from "../../../core/project/index.ts";
import { comparedLines } from "../../../web/history/compared-lines.ts";
import { withFence } from "../../core/project/small-projects.ts";

const before = withFence();

it("every line of both documents is drawn once in its view, as the same, changed, added or gone", () => {
  const moved = applyCommand(before, {
    kind: "move-node",
    line: { of: "item", itemId: "one" },
    nodeId: "c",
    to: [900, 200],
  });
  const after = applyCommand(moved, { kind: "delete-item", itemId: "fence" });
  const told = (view: "plan" | "side") =>
    comparedLines(before, after, view).map(({ name, change }) => `${name} ${change}`);
  expect(told("plan")).toEqual(["S1 changed", "F1 gone"]);
  expect(told("side")).toEqual(["Flat same", "F1 gone"]);
  const back = comparedLines(after, before, "plan").map(({ change }) => change);
  expect(back).toEqual(["changed", "added"]);
});

it("a document over itself is the same all over", () => {
  const changes = [...comparedLines(before, before, "plan"), ...comparedLines(before, before, "side")];
  expect(changes.every(({ change }) => change === "same")).toBe(true);
});
