import { describe, expect, it } from "vitest";
import { toRadians } from "../../../core/foundation/index.ts";
import type { BendMethod, Project } from "../../../core/project/index.ts";
import {
  arcProfile,
  edgeOf,
  fence,
  type LaidTray,
  layTray,
  partOf,
  planNode,
  rectangle,
  section,
  straightProfile,
  tray,
} from "../trays.ts";

/** Flat lengths as written to the template. */
const WRITTEN_MM = 1e-6;

/** A fence of 20 mm foam round a quarter turn of 300 inside, between two straights of 290. */
function roundFence(choice: BendMethod | undefined, changes: Partial<Project["bending"]> = {}): Project {
  const elements = [planNode("a", 0, 50), planNode("b", 600, 50, { radiusMm: 310 }), planNode("c", 600, 650)];
  const project = tray(
    { p: straightProfile(0, 100, 700, 100) },
    [
      section(1, rectangle(0, 700, 0, 700)),
      fence(1, elements, choice ? { bends: [{ atMm: 500, method: choice }] } : {}),
    ],
    {},
  );
  return { ...project, bending: { ...project.bending, ...changes } };
}

const bendOf = (laid: LaidTray, partId: string) => {
  const zone = partOf(laid, partId).zones.find(({ leastRadiusMm }) => leastRadiusMm !== undefined);
  if (!zone?.bend) throw new Error("no bend");
  return { ...zone, bend: zone.bend };
};

describe("a bend of 90° at an inside radius of 300 in 20 mm foam", () => {
  // O4 (CLOSED FORM) bent whole; the web's own middle where it is slotted.
  it.each([
    { method: "bend cold", lengthMm: 486.946861306418 },
    { method: "closing slots", lengthMm: (Math.PI / 2) * 318.5 },
    { method: "opening slots", lengthMm: (Math.PI / 2) * 301.5 },
  ] as const)("is $lengthMm long: $method", ({ method, lengthMm }) => {
    const laid = layTray(roundFence(method));
    const { lower, zone } = {
      lower: edgeOf(partOf(laid, "F1"), "lower"),
      zone: bendOf(laid, "F1"),
    };
    expect(Math.abs(lower.flatLengthMm - 580 - lengthMm)).toBeLessThan(WRITTEN_MM);
    expect(Math.abs(lower.spaceLengthMm - 580 - lengthMm)).toBeLessThan(1e-3);
    expect(zone.toUMm - zone.fromUMm).toBeCloseTo(lengthMm, 6);
    expect(lower.drawnLengthMm).toBeCloseTo(580 + 310 * (Math.PI / 2), 3);
  });

  it("has slots on the inside where they close, on the outside where they open", () => {
    // The fence turns left, so that its left, outboard face is inside the bend.
    expect(bendOf(layTray(roundFence("closing slots")), "F1").bend.slots?.face).toBe("outboard face");
    expect(bendOf(layTray(roundFence("opening slots")), "F1").bend.slots?.face).toBe("inboard face");
  });

  it("has slots whose turns add up to it, the first and last half a pitch inside", () => {
    const { fromUMm, toUMm, bend } = bendOf(layTray(roundFence("closing slots")), "F1");
    const { slots } = bend;
    if (!slots) throw new Error("no slots");
    const { placesUMm, pitchMm, turnRad, kerfMm, mouthMm, depthMm } = slots;
    expect(placesUMm.length * turnRad).toBeCloseTo(toRadians(90), 9);
    expect((placesUMm[0] ?? 0) - fromUMm).toBeCloseTo((pitchMm?.[0] ?? 0) / 2, 6);
    expect(toUMm - (placesUMm.at(-1) ?? 0)).toBeCloseTo((pitchMm?.[0] ?? 0) / 2, 6);
    expect(kerfMm - mouthMm).toBeCloseTo(2 * depthMm * Math.tan(turnRad / 2), 9);
  });

  it("takes its kerf from the slots that were tried on scrap", () => {
    const closedRad = 3 * 2 * Math.atan(2.4 / (2 * 17));
    const tried = layTray(roundFence("closing slots", { slotTest: { depthMm: 17, closedRad } }));
    expect(bendOf(tried, "F1").bend.slots?.kerfMm).toBeCloseTo(2.4, 9);
  });

  it("in planks is as long as their flats, edge to edge", () => {
    const { fromUMm, toUMm, verdict, bend } = bendOf(layTray(roundFence("planks")), "F1");
    expect(verdict).toBe("planks");
    const planks = bend.planks ?? [];
    expect(planks.length).toBeGreaterThan(3);
    expect(planks[0]?.fromUMm).toBeCloseTo(fromUMm, 9);
    expect(planks.at(-1)?.toUMm).toBeCloseTo(toUMm, 9);
    const each = 2 * 310 * Math.sin(toRadians(90) / planks.length / 2);
    for (const plank of planks) expect(plank.toUMm - plank.fromUMm).toBeCloseTo(each, 6);
  });
});

describe("the verdict on a bend", () => {
  const radiusOf = (radiusMm: number, thicknessMm: number, changes: Partial<Project["bending"]> = {}) => {
    const project = tray(
      { p: arcProfile([0, 100], radiusMm, 0.6, 1) },
      [section(1, rectangle(5, radiusMm * 0.56, 0, 200))],
      { drawnFace: "neutral", thicknessMm },
    );
    const laid = layTray({ ...project, bending: { ...project.bending, ...changes } });
    return { ...bendOf(laid, "S1"), laid };
  };

  it("is cold down to the foam's radius, then slots, then planks, then not this foam", () => {
    expect(radiusOf(1201, 20).verdict).toBe("bend cold");
    expect(radiusOf(1199, 20).verdict).toBe("relief slots");
    // A web of 3 mm takes 60 × 3 = 180 mm itself: its middle lies 8.5 mm outside.
    expect(radiusOf(172, 20).verdict).toBe("relief slots");
    expect(radiusOf(171, 20).verdict).toBe("planks");
    // Planks that stand off by 1 mm are narrower than 20 mm below a radius of about 50.
    expect(radiusOf(45, 20, { slotWebMm: 1 }).verdict).toBe("not with this foam");
  });

  it("comes with the figures that led to it", () => {
    const { bend } = radiusOf(400, 20);
    expect(bend.limits.coldRadiusMm).toBe(1200);
    expect(bend.limits.coldFrom).toBe("common-practice");
    expect(bend.limits.slots?.webRadiusMm).toBeCloseTo(408.5, 6);
    expect(bend.limits.slots?.leastWebRadiusMm).toBe(180);
    expect(bend.limits.planks?.leastWidthMm).toBe(20);
    expect(bend.turnRad).toBeCloseTo(0.6, 9);
  });

  it("that nobody chose is a problem which says how it is laid; once chosen it is none", () => {
    const { laid } = radiusOf(400, 20);
    expect(laid.problems).toMatchObject([{ kind: "bend-too-tight", laidAs: "relief slots" }]);
    expect(layTray(roundFence("planks")).problems).toEqual([]);
    expect(layTray(roundFence("bend cold")).problems).toMatchObject([
      { kind: "bend-too-tight", laidAs: "bend cold" },
    ]);
  });

  it("with slots left open says that they carry no shear", () => {
    const { laid } = radiusOf(400, 20, { slotFilling: "open" });
    expect(laid.problems.map(({ kind }) => kind)).toContain("slots-left-open");
  });

  it("whose bend has moved away is a problem at its place", () => {
    const project = roundFence("planks");
    const items = project.items.map((item) =>
      item.kind === "fence" ? { ...item, bends: [{ atMm: 50, method: "planks" as const }] } : item,
    );
    expect(layTray({ ...project, items }).problems).toMatchObject([
      { kind: "bend-too-tight" },
      { kind: "bend-choice-without-bend", atMm: 50 },
    ]);
  });
});
