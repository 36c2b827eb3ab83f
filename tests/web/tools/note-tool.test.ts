import { expect, it } from "vitest";
import { applyCommand, pinPlace } from "../../../core/project/index.ts";
import { CANCEL, click, emptyTray, hear, trayWithSection, workWith } from "./bench-of-tools.ts";

it("a note on bare paper is pinned to the place, on the grid, and is chosen when its words are set down", () => {
  const work = hear(workWith("note", emptyTray()), ...click([403, 198]), {
    kind: "write",
    text: "  Exhaust here, keep 40 mm away \n",
  });
  expect(work.project.notes).toMatchObject([
    {
      id: "note1",
      view: "plan",
      text: "Exhaust here, keep 40 mm away",
      pin: { kind: "place", at: { x: 400, up: 200 } },
    },
  ]);
  expect(work.selection).toEqual({ kind: "note", noteId: "note1" });
  expect(work.hand.name).toBe("select");
  expect(work.past).toHaveLength(1);
});

it("a note on a node goes where the node goes", () => {
  const work = hear(workWith("note", trayWithSection()), ...click([1000, 400]), {
    kind: "write",
    text: "Round",
  });
  const [note] = work.project.notes;
  expect(note?.pin).toEqual({ kind: "node", line: { of: "item", itemId: "s1" }, nodeId: "n3" });
  const line = { of: "item", itemId: "s1" } as const;
  const moved = applyCommand(work.project, { kind: "move-node", line, nodeId: "n3", to: [1200, 450] });
  expect(moved.notes.map((one) => pinPlace(moved, one))).toEqual([{ x: 1200, up: 450 }]);
});

it("a note in the side view is pinned to the node of a profile", () => {
  const work = hear(workWith("note", trayWithSection()), ...click([-100, 60], "side"), {
    kind: "write",
    text: "Leading edge",
  });
  expect(work.project.notes[0]).toMatchObject({
    view: "side",
    pin: { kind: "node", line: { of: "profile", profileId: "p1" }, nodeId: "n1" },
  });
});

it("a note without words is none, and one that is left off is none", () => {
  const begun = hear(workWith("note", emptyTray()), ...click([400, 200]));
  expect(hear(begun, { kind: "write", text: " \n " }).project.notes).toEqual([]);
  const left = hear(begun, CANCEL);
  expect(left.project.notes).toEqual([]);
  expect(left.hand.name).toBe("note");
});
