import { describe, expect, it } from "vitest";
import { cutStrips } from "../../../core/cutting/index.ts";
import { type EdgeMark, edgeMarks } from "../../../core/marking/index.ts";
import {
  arcProfile,
  freeEdge,
  layTray,
  planNode,
  rectangle,
  section,
  straightProfile,
  stretchOf,
  transition,
  tray,
} from "../trays.ts";

/** What a pencil is put to. */
const PENCIL_MM = 0.05;

function marksOf(project: ReturnType<typeof tray>) {
  const { sheets, parts, joints } = layTray(project);
  const { strips } = cutStrips(parts, project);
  return { marks: edgeMarks({ sheets, parts, strips, joints }), joints };
}

const ofSide = (marks: readonly EdgeMark[], partId: string) =>
  marks.filter((mark) => mark.stripId.startsWith(partId) && mark.joint !== undefined);

describe("marks along a joint", () => {
  const lip = transition(1, stretchOf("s1", "outer", "front"), freeEdge([1000, 480, 180], [0, 480, 140]));
  const flat = tray({ p: straightProfile(0, 100, 1000, 100) }, [section(1, rectangle(0, 1000, 0, 300)), lip]);

  it("carry the same numbers on both strips, at every 100 mm of the drawn edge from the joint's start", () => {
    const { marks, joints } = marksOf(flat);
    expect(joints).toHaveLength(1);
    const [own, others] = [ofSide(marks, "T1"), ofSide(marks, "S1")];
    const labels = Array.from({ length: 9 }, (_, i) => `${i + 1}`);
    expect(own.map(({ joint }) => joint?.label)).toEqual(labels);
    expect(others.map(({ joint }) => joint?.label)).toEqual(labels);
    expect(own.map(({ joint }) => joint?.alongMm)).toEqual(labels.map((label) => Number(label) * 100));
  });

  it("lie 100 mm apart on both strips where the edge is straight, and over the drawn places on a level sheet", () => {
    const { marks, joints } = marksOf(flat);
    const start = joints[0]?.from.x ?? 0;
    for (const mark of ofSide(marks, "S1")) {
      const x = Math.abs(start - (mark.joint?.alongMm ?? 0));
      // A level sheet lies flat as it stands: its u is x.
      expect(Math.abs(mark.at.u - x)).toBeLessThan(PENCIL_MM);
    }
    const onLip = ofSide(marks, "T1")
      .map(({ fromCornerMm }) => fromCornerMm)
      .sort((a, b) => a - b);
    onLip.slice(1).forEach((value, i) => {
      expect(Math.abs(value - (onLip[i] ?? 0) - 100)).toBeLessThan(PENCIL_MM);
    });
  });

  // CLOSED FORM: on a bent sheet, R 800 at the air face, the neutral fibre of a 20 mm core behind 0.8 mm of skin keeps
  // (800 − 10.8) / 800 of a length along the bend.
  // Bent whole the middle of 20 mm foam keeps its length; with closing slots the middle of a 3 mm web on the air side.
  it.each([
    { way: "bent cold", leastBendRatio: 20, fibreMm: 800 - 10.8 },
    { way: "with closing slots", leastBendRatio: 60, fibreMm: 800 - 0.8 - 1.5 },
  ])("keep their places along the bend of a sheet, $way", ({ leastBendRatio, fibreMm }) => {
    const items = [
      section(1, rectangle(0, 500, 0, 300)),
      section(2, [
        {
          kind: "follow",
          id: "f",
          edge: { itemId: "s1", fromNodeId: "outer", toNodeId: "front", hand: "right" },
          direction: "against",
          next: "line",
        },
        planNode("b", 500, 600),
        planNode("c", 0, 600),
      ]),
    ];
    const bent = tray({ p: arcProfile([0, 100], 800, 0.9, 1) }, items, { leastBendRatio });
    const { marks } = marksOf(bent);
    const sides = ["S1", "S2"].map((id) =>
      ofSide(marks, id)
        .map(({ at: { u } }) => u)
        .sort((a, b) => a - b),
    );
    for (const us of sides) {
      expect(us.length).toBeGreaterThan(3);
      us.slice(1).forEach((u, i) => {
        expect(Math.abs(u - (us[i] ?? 0) - (100 * fibreMm) / 800)).toBeLessThan(PENCIL_MM);
      });
    }
  });
});
