import { describe, expect, it } from "vitest";
import { at } from "../../../core/foundation/index.ts";
import {
  fence,
  partOf,
  planNode,
  rectangle,
  section,
  sideNode,
  soundTray,
  stretchOf,
  transition,
  tray,
} from "../trays.ts";

const PROFILES = {
  p: [sideNode("a", -50, 60), sideNode("b", 1850, 60)],
  q: [sideNode("a", -50, 90), sideNode("b", 1850, 90)],
};
/** A floor, a step of 30 mm over 120, and an outer floor; a fence crosses all three, and both joints. */
const items = [
  section(1, rectangle(0, 1800, 0, 300)),
  section(2, rectangle(0, 1800, 420, 700), { profileId: "q" }),
  transition(1, stretchOf("s1", "outer", "front"), stretchOf("s2", "inner", "rear")),
  fence(1, [planNode("a", 300, 200), planNode("b", 1500, 520)]),
];
const laid = soundTray(
  tray(PROFILES, items, { symmetry: "mirrored", thicknessMm: 10, gapLimitMm: 0, skinMm: 0.8 }),
);

/** Faces end square under the drawn edge: a skin of 0.8 mm over a fold of 14° makes 0.8 (1 / cos 14° − 1) of a step. */
const STEP_MM = 0.03;

describe("a fence across two joints of a transition", () => {
  it("has one seat without a gap, from sheet to sheet", () => {
    const { seat } = partOf(laid, "F1R");
    expect([...new Set(seat.map(({ sheetId }) => sheetId))]).toEqual(["S1", "T1", "S2"]);
    seat.slice(1).forEach((station, i) => {
      expect(Math.abs(station.midZMm - at(seat, i).midZMm)).toBeLessThan(
        0.5 * (station.alongMm - at(seat, i).alongMm) + STEP_MM,
      );
    });
  });

  it("stands under each at that sheet's foam", () => {
    const { seat } = partOf(laid, "F1R");
    // The foam's lower face lies a skin above the drawn air side, along the normal: on the step at its slope.
    const slope = Math.atan(30 / 120);
    for (const { at: p, midZMm } of seat) {
      if (p.y < 290) expect(midZMm).toBeCloseTo(60.8, 6);
      if (p.y > 430) expect(midZMm).toBeCloseTo(90.8, 6);
      if (p.y > 310 && p.y < 410) expect(midZMm).toBeCloseTo(60 + (p.y - 300) / 4 + 0.8 / Math.cos(slope), 6);
    }
  });

  it("is joined to all three", () => {
    const seats = laid.joints
      .filter(({ kind }) => kind === "fence seat")
      .map(({ partIds }) => partIds.join("/"));
    expect(seats.filter((id) => id.startsWith("F1R"))).toEqual(["F1R/S1", "F1R/T1R", "F1R/S2R"]);
  });
});
