import { describe, expect, it } from "vitest";
import type { Vec2 } from "../../../../core/foundation/index.ts";
import { applyCommand, newOpening, newSection, type Project } from "../../../../core/project/index.ts";
import {
  ALL_SNAPS,
  circleOutline,
  type Snap,
  type SnapKind,
  type ToolContext,
} from "../../../../web/tools/index.ts";
import { contextOf, hear, move, place, trayWithSection, type Work, workWith } from "../bench-of-tools.ts";

/** The rectangle of the bench, and over its outer rear corner a square that crosses it; a round hole outboard. */
function trayWithCrossing(): Project {
  const corners: readonly Vec2[] = [
    [803, 207],
    [1403, 307],
    [1303, 907],
    [703, 807],
  ];
  const crossed = applyCommand(trayWithSection(), {
    kind: "add-section",
    section: newSection({
      id: "s2",
      number: 2,
      name: "Wing floor",
      profileId: "p1",
      closed: true,
      elements: corners.map(([x, y], index) => ({ kind: "node", id: `m${index + 1}`, x, y, next: "line" })),
    }),
  });
  return applyCommand(crossed, {
    kind: "add-opening",
    opening: newOpening({
      id: "o1",
      number: 1,
      name: "Hole",
      ...circleOutline({ centre: [300, 803], radiusMm: 150, isHalf: false }),
    }),
  });
}

const drawn = (nodes: readonly Vec2[]): Work =>
  hear(
    workWith("fence", trayWithCrossing()),
    ...nodes.map(([first, second]) => ({ kind: "typed", typed: { first, second } }) as const),
  );

function snapIn(work: Work, at: Vec2, changes: Partial<ToolContext> = {}): Snap {
  const { hand } = work.hand.hear(move(at), { ...contextOf(work), ...changes });
  return hand.sight(contextOf(work)).snap ?? { at: [Number.NaN, Number.NaN], reasons: [] };
}

const kindsOf = (snap: Snap): readonly SnapKind[] => (snap.signs ?? []).map(({ kind }) => kind);

describe("what places snap to", () => {
  it("the middle of an edge, half its length from both ends", () => {
    const snap = snapIn(drawn([]), [1106, 254]);
    expect(snap.at).toEqual([1103, 257]);
    expect(snap.reasons).toEqual(["middle of the edge of Wing floor"]);
    expect(kindsOf(snap)).toEqual(["middles"]);
  });

  it("a crossing, where both lines' equations hold", () => {
    // x = 1000 on the line through (803, 207) and (1403, 307).
    const snap = snapIn(drawn([]), [1004, 236]);
    expect(snap.at).toEqual([expect.closeTo(1000, 6), expect.closeTo(207 + (100 * 197) / 600, 6)]);
    expect(snap.reasons).toEqual(["crossing of Floor and Wing floor"]);
  });

  it("a tangent from the last node: as long as the root of d² − r², and square to the radius", () => {
    const from: Vec2 = [-420, 777];
    const away = Math.hypot(300 - from[0], 803 - from[1]);
    const openRad = Math.acos(150 / away);
    const towardRad = Math.atan2(from[1] - 803, from[0] - 300);
    const touch: Vec2 = [
      300 + 150 * Math.cos(towardRad - openRad),
      803 + 150 * Math.sin(towardRad - openRad),
    ];
    const snap = snapIn(drawn([from]), [touch[0] + 3, touch[1] - 4]);
    expect(snap.reasons).toEqual([expect.stringMatching(/^tangent to the edge of /)]);
    expect(Math.hypot(snap.at[0] - from[0], snap.at[1] - from[1])).toBeCloseTo(
      Math.sqrt(away ** 2 - 150 ** 2),
      6,
    );
    const [x, y] = [snap.at[0] - 300, snap.at[1] - 803];
    expect(x * (snap.at[0] - from[0]) + y * (snap.at[1] - from[1])).toBeCloseTo(0, 6);
    expect(kindsOf(snap)).toEqual(["tangents"]);
  });

  it("square from the last node to an edge: the shortest way there", () => {
    const from: Vec2 = [617.3, 603.1];
    const snap = snapIn(drawn([from]), [621, 402]);
    expect(snap.at).toEqual([expect.closeTo(617.3, 9), expect.closeTo(400, 9)]);
    expect(snap.reasons).toEqual(["square to the edge of Floor"]);
  });

  it("straight on from the last segment, in whole steps of the grid along it", () => {
    const snap = snapIn(
      drawn([
        [-600, 500],
        [-570, 540],
      ]),
      [-508, 619],
    );
    // The direction is (3, 4)/5 and the length along it a whole 100.
    expect(snap.at).toEqual([expect.closeTo(-510, 9), expect.closeTo(620, 9)]);
    expect(snap.reasons).toEqual(["straight on from node 2"]);
  });

  it("square to the last segment", () => {
    const snap = snapIn(
      drawn([
        [-600, 500],
        [-570, 540],
      ]),
      [-651, 599],
    );
    expect(snap.at).toEqual([expect.closeTo(-650, 9), expect.closeTo(600, 9)]);
    expect(snap.reasons).toEqual(["square to the last segment"]);
  });

  it("along the edge that the line began on", () => {
    const snap = snapIn(drawn([[1000, 330]]), [1003, 586]);
    expect(snap.at[0]).toBeCloseTo(1000, 9);
    expect(snap.reasons[0]).toBe("tangent to the edge of Floor");
  });

  it("where the way straight on meets an edge", () => {
    const snap = snapIn(
      drawn([
        [203, 640],
        [233, 600],
      ]),
      [384, 398],
    );
    expect(snap.at).toEqual([expect.closeTo(383, 9), expect.closeTo(400, 9)]);
    expect(snap.reasons).toEqual(["straight on from node 2", "on the edge of Floor"]);
  });

  it("the hairline, and the numbered stations of the ruler", () => {
    expect(snapIn(drawn([]), [-398, 655]).reasons).toEqual(["station −400", "grid 10"]);
    const cut = snapIn(drawn([]), [-373, 655], { hairlineXMm: -377.5 });
    expect(cut.at[0]).toBe(-377.5);
    expect(cut.reasons[0]).toBe("hairline, station −377.5");
  });

  it("in plan the x of a node of the side view", () => {
    const bent = applyCommand(trayWithCrossing(), {
      kind: "move-node",
      line: { of: "profile", profileId: "p1" },
      nodeId: "n2",
      to: [1893.4, 60],
    });
    const snap = snapIn(workWith("fence", bent), [1896, 655]);
    expect(snap.at[0]).toBe(1893.4);
    expect(snap.reasons[0]).toBe("same x as node 2 of Flat in side view");
  });

  it("in side view the height of what is chosen in plan", () => {
    const work = workWith("profile", trayWithSection(), { kind: "item", itemId: "s1", nodeId: "n3" });
    const context = { ...contextOf(work), heightOver: () => 87.25 };
    const { hand } = work.hand.hear({ kind: "move", place: place([1733, 91], "side") }, context);
    const snap = hand.sight(context).snap;
    expect(snap?.at).toEqual([1730, 87.25]);
    expect(snap?.reasons).toContain("height 87.3 of node 3 of Floor in plan");
  });

  it("a kind that is switched off is passed over, and all together leave the place where it is", () => {
    const off = (kind: SnapKind) =>
      snapIn(drawn([]), [1106, 254], { snaps: { ...ALL_SNAPS, [kind]: false } });
    expect(off("middles").reasons).toEqual(["on the edge of Wing floor"]);
    const none = snapIn(drawn([]), [1106, 254], { snaps: { ...ALL_SNAPS, isOn: false } });
    expect(none).toEqual({ at: [1106, 254], reasons: [] });
  });
});
