import { describe, expect, it } from "vitest";
import type { Vec2 } from "../../../../core/foundation/index.ts";
import type { Snap } from "../../../../web/tools/index.ts";
import { contextOf, hear, move, press, trayWithSection, workWith } from "../bench-of-tools.ts";

/** Where the next node of a section would go for a pointer at a place. */
function snapAt(at: Vec2, snaps = true): Snap | undefined {
  const work = hear(workWith("section", trayWithSection()), move(at, "plan", snaps));
  return work.hand.sight(contextOf(work)).snap;
}

/** Without what the board draws of it. */
function inWords(snap: Snap | undefined): Omit<Snap, "signs"> | undefined {
  if (!snap) return undefined;
  const { signs: _, ...words } = snap;
  return words;
}

describe("snaps say why", () => {
  it("near a node: that node, by its number and its section", () => {
    expect(inWords(snapAt([1008, 393]))).toEqual({ at: [1000, 400], reasons: ["node 3 of Floor"] });
  });

  it("near an edge: on that edge", () => {
    const snap = snapAt([487, 406]);
    expect(snap?.at[0]).toBeCloseTo(487, 9);
    expect(snap?.at[1]).toBeCloseTo(400, 9);
    expect(snap?.reasons).toEqual(["on the edge of Floor"]);
    expect(snap?.edge).toEqual({ line: { of: "item", itemId: "s1" }, edgeId: "n3" });
  });

  it("near the centre line: the centre line, and the grid along it", () => {
    expect(inWords(snapAt([1433, 4]))).toEqual({ at: [1430, 0], reasons: ["grid 10", "centre line"] });
  });

  it("elsewhere: the grid", () => {
    expect(inWords(snapAt([1433, 627]))).toEqual({ at: [1430, 630], reasons: ["grid 10"] });
  });

  it("held off: where the pointer is, without a reason", () => {
    expect(snapAt([1403.3, 627.1], false)).toEqual({ at: [1403.3, 627.1], reasons: [] });
  });

  it("held off and left of the centre line: still the drawn half", () => {
    expect(snapAt([1403.3, -20], false)).toEqual({ at: [1403.3, 0], reasons: ["centre line"] });
  });

  it("a moved node lines up with the nearest node of its line", () => {
    const work = hear(workWith("select", trayWithSection()), press([1000, 400]), move([1313, 106]));
    expect(inWords(work.hand.sight(contextOf(work)).snap)).toEqual({
      at: [1310, 100],
      reasons: ["grid 10", "same y as node 2"],
    });
  });

  it("a drawn node lines up with one that was just set down", () => {
    const work = hear(
      workWith("section", trayWithSection()),
      { kind: "typed", typed: { first: 1503.7, second: 700 } },
      move([1508, 903]),
    );
    expect(inWords(work.hand.sight(contextOf(work)).snap)).toEqual({
      at: [1503.7, 900],
      reasons: ["same x as node 1", "grid 10"],
    });
  });
});
