import { describe, expect, it } from "vitest";
import type { Project, Section } from "../../../core/project/index.ts";
import {
  edgeOf,
  followEdge,
  layTray,
  partOf,
  planNode,
  rectangle,
  section,
  sideNode,
  soundTray,
  straightProfile,
  type TraySettings,
  tray,
} from "../trays.ts";

const RADIANS_PER_DEGREE = Math.PI / 180;
const LEAN = 5 * RADIANS_PER_DEGREE;
/** 0.8 mm of skin and half of 20 mm foam. */
const NEUTRAL_MM = 10.8;

/** A floor with a ramp of radius 1500 behind, and an outer section along its outer edge. */
const profile = [sideNode("a", 0, 100), sideNode("b", 350, 100, { radiusMm: 1500 }), sideNode("c", 700, 170)];

const floor = section(1, rectangle(0, 600, 50, 300));
const outer = (changes: Partial<Section> = {}): Section =>
  section(
    2,
    [
      followEdge("shared", { itemId: "s1", fromNodeId: "outer", toNodeId: "front" }, "against"),
      planNode("far", 600, 500),
      planNode("off", 0, 500),
    ],
    changes,
  );

const pair = (changes: Partial<Section>, settings: TraySettings = {}): Project =>
  tray({ p: profile, high: profile.map((node) => ({ ...node, z: node.z + 2 })) }, [floor, outer(changes)], {
    symmetry: "mirrored",
    gapLimitMm: 0,
    ...settings,
  });

describe("a section along another one's edge", () => {
  it("that goes on smoothly loses nothing but half of the glue line", () => {
    for (const glueGapMm of [0, 0.4]) {
      const laid = soundTray(pair({}, { glueGapMm }));
      for (const hand of ["R", "L"]) {
        expect(edgeOf(partOf(laid, `S1${hand}`), "front").flatLengthMm).toBeCloseTo(250 - glueGapMm / 2, 9);
        expect(edgeOf(partOf(laid, `S2${hand}`), "off").flatLengthMm).toBeCloseTo(200 - glueGapMm / 2, 9);
      }
      expect(laid.joints.map(({ id, kind, cut }) => [id, kind, cut])).toEqual([
        ["S2R/S1R", "shared edge", "square"],
        ["S2L/S1L", "shared edge", "square"],
      ]);
    }
  });

  it.each([1, -1])(
    "that leans by 5° has both edges set back by the mitre, on both hands (lean %i)",
    (turn) => {
      const laid = soundTray(pair({ tiltRad: turn * LEAN }));
      const setBackMm = NEUTRAL_MM * Math.tan((turn * LEAN) / 2);
      for (const hand of ["R", "L"]) {
        expect(edgeOf(partOf(laid, `S1${hand}`), "front").flatLengthMm).toBeCloseTo(250 - setBackMm, 6);
        expect(edgeOf(partOf(laid, `S2${hand}`), "off").flatLengthMm).toBeCloseTo(
          200 / Math.cos(LEAN) - setBackMm,
          6,
        );
      }
      for (const joint of laid.joints) {
        expect(joint.cut).toBe("mitre");
        expect(joint.foldRad[0]).toBeCloseTo(turn * LEAN, 9);
        expect(joint.setBackMm[0]).toBeCloseTo(setBackMm, 9);
        expect(joint.setBackMm[1]).toBeCloseTo(setBackMm, 9);
      }
    },
  );

  it("that leans has, on the ramp, the fold between the normals there", () => {
    const laid = soundTray(pair({ tiltRad: LEAN }));
    const slope = 70 / 350;
    const cosine = (1 + slope ** 2) / Math.hypot(1, slope) / Math.hypot(1, slope, Math.tan(LEAN));
    expect(laid.joints[0]?.foldRad.map(Math.abs).sort()[0]).toBeCloseTo(Math.acos(cosine), 6);
  });

  it("is the same whichever of the two stands first in the document", () => {
    const project = pair({ tiltRad: LEAN });
    const turned = { ...project, items: project.items.toReversed() };
    const [laid, other] = [soundTray(project), soundTray(turned)];
    for (const part of laid.parts) expect(partOf(other, part.id)).toEqual(part);
    expect(other.joints.map(({ id }) => id)).toEqual(laid.joints.map(({ id }) => id));
  });

  it("but 2 mm higher is named, with the gap, and not joined", () => {
    const laid = layTray(pair({ profileId: "high" }));
    const apart = laid.problems.filter(({ kind }) => kind === "sheets-do-not-meet");
    expect(apart).toHaveLength(1);
    expect(apart[0]).toMatchObject({ place: { itemId: "s2" }, name: "Section 2", otherName: "Section 1" });
    if (apart[0]?.kind === "sheets-do-not-meet") expect(apart[0].gapMm).toBeCloseTo(2, 6);
    expect(laid.joints).toEqual([]);
    expect(laid.parts).toHaveLength(4);
  });

  it("is set back at a shared edge as short as 20 mm that ends in sharp corners", () => {
    const short = section(1, [planNode("a", 100, 100), planNode("b", 120, 100), planNode("tip", 110, 60)]);
    const beside = section(
      2,
      [
        followEdge("shared", { itemId: "s1", fromNodeId: "a", toNodeId: "b" }, "against"),
        planNode("far", 110, 140),
      ],
      { tiltRad: LEAN },
    );
    const laid = soundTray(tray({ p: straightProfile(0, 0, 500, 0) }, [short, beside], { gapLimitMm: 0 }));
    expect(laid.joints[0]?.foldRad[0]).toBeCloseTo(LEAN, 9);
    expect(laid.joints[0]?.foldRad[1]).toBeCloseTo(LEAN, 9);
  });
});

describe("a section that meets the centre line", () => {
  const archOutline = [
    planNode("a", 0, 0),
    planNode("b", 100, 0),
    planNode("c", 100, 150),
    planNode("d", 400, 150),
    planNode("e", 400, 0),
    planNode("f", 600, 0),
    planNode("g", 600, 300),
    planNode("h", 0, 300),
  ];

  it("in two stretches is one part with a hole, which is walked clockwise", () => {
    const laid = soundTray(
      tray({ p: straightProfile(0, 0, 600, 0) }, [section(1, archOutline)], { symmetry: "mirrored" }),
    );
    const part = partOf(laid, "S1");
    expect(part.hand).toBe("whole");
    const areas = part.loops.map(({ edges }) => {
      const polygon = edges.flatMap(({ points }) => points.slice(0, -1));
      return polygon.reduce((sum, a, i) => {
        const b = polygon[(i + 1) % polygon.length] ?? a;
        return sum + (a.u * b.v - b.u * a.v) / 2;
      }, 0);
    });
    expect(areas[0]).toBeCloseTo(600 * 600, 6);
    expect(areas[1]).toBeCloseTo(-300 * 300, 6);
    expect(part.flatAreaMm2).toBeCloseTo(270_000, 6);
    expect(part.spaceAreaMm2).toBeCloseTo(270_000, 4);
    expect(laid.joints).toEqual([]);
  });

  it("and leans is two parts with a joint on every stretch, folded by twice the lean", () => {
    const laid = soundTray(
      tray({ p: straightProfile(0, 0, 600, 0) }, [section(1, archOutline, { tiltRad: LEAN })], {
        symmetry: "mirrored",
        gapLimitMm: 0,
      }),
    );
    expect(laid.parts.map(({ id }) => id)).toEqual(["S1R", "S1L"]);
    expect(laid.joints.map(({ kind, lengthMm }) => [kind, Math.round(lengthMm)])).toEqual([
      ["centre", 100],
      ["centre", 200],
    ]);
    for (const joint of laid.joints) {
      expect(joint.foldRad[0]).toBeCloseTo(2 * LEAN, 9);
      expect(joint.setBackMm[0]).toBeCloseTo(NEUTRAL_MM * Math.tan(LEAN), 9);
    }
    const width = 300 / Math.cos(LEAN) - NEUTRAL_MM * Math.tan(LEAN);
    for (const id of ["S1R", "S1L"]) expect(edgeOf(partOf(laid, id), "h").flatLengthMm).toBeCloseTo(width, 8);
  });
});
