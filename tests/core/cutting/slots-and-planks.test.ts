import { describe, expect, it } from "vitest";
import { designTray } from "../../../core/design.ts";
import { at, toRadians } from "../../../core/foundation/index.ts";
import type { BendMethod, Project } from "../../../core/project/index.ts";
import { arcProfile, rectangle, section, tray } from "../trays.ts";

const RADIUS_MM = 400;
const SWEEP = toRadians(50);

/** 20 mm foam over an arc of radius 400 from end to end, 300 wide, lying on both sides of the centre line. */
function bent(method: BendMethod, changes: Partial<Project["bending"]> = {}): Project {
  const project = tray(
    { p: arcProfile([0, 100], RADIUS_MM, SWEEP, 1) },
    [
      section(1, rectangle(0, RADIUS_MM * Math.sin(SWEEP), 0, 300), {
        bends: [{ atMm: 100, method }],
      }),
    ],
    { drawnFace: "neutral" },
  );
  return { ...project, bending: { ...project.bending, ...changes } };
}

describe("a slotted strip", () => {
  const design = designTray(bent("closing slots"));
  const [strip] = design.strips;
  const [zone] = design.parts[0]?.zones ?? [];
  const slots = strip?.slots ?? [];

  it("has every slot of its bend, as long as it is wide", () => {
    expect(slots.map(({ uMm }) => uMm)).toEqual(zone?.bend?.slots?.placesUMm);
    for (const { lengthMm, face } of slots) {
      expect(lengthMm).toBeCloseTo(300, 9);
      expect(face).toBe("upper face");
    }
  });

  it("has a row of its marking-out table at every slot", () => {
    const [table] = design.marking;
    const rows = (table?.rows ?? []).filter(({ reason }) => reason === "slot");
    expect(rows.map(({ alongMm }) => alongMm + (table?.origin.u ?? 0))).toEqual(slots.map(({ uMm }) => uMm));
    for (const { offsetsMm } of rows) expect(offsetsMm).toHaveLength(2);
  });

  it("takes glue into its slots where these are to be filled, and none where they stay open", () => {
    const glued = design.totals.glueMassKg;
    const open = designTray(bent("closing slots", { slotFilling: "open" })).totals.glueMassKg;
    const { depthMm = 0, kerfMm = 0, mouthMm = 0 } = zone?.bend?.slots ?? {};
    // A trapezium as wide as the kerf at its bottom and as the mouth that stays at its top.
    const fillMm3 = slots.length * 300 * depthMm * ((kerfMm + mouthMm) / 2);
    expect(glued - open).toBeCloseTo(fillMm3 * 1e-9 * 1100, 9);
    expect(design.glueUp.some(({ cautions }) => cautions.some((words) => words.includes("slots")))).toBe(
      true,
    );
  });
});

describe("a bend in planks", () => {
  const design = designTray(bent("planks"));
  const planks = design.parts[0]?.zones[0]?.bend?.planks ?? [];

  it("is a strip for each plank, and together they are the sheet", () => {
    expect(planks.length).toBeGreaterThan(3);
    expect(design.strips).toHaveLength(planks.length);
    const areaMm2 = design.strips.reduce((sum, strip) => sum + strip.areaMm2, 0);
    expect(areaMm2).toBeCloseTo(design.parts[0]?.flatAreaMm2 ?? 0, 6);
    // Flats between neighbouring points of the arc, which lie evenly on it.
    const chordMm = 2 * RADIUS_MM * Math.sin(SWEEP / planks.length / 2);
    for (const strip of design.strips) expect(strip.areaMm2).toBeCloseTo(300 * chordMm, 4);
  });

  it("has seams that are bevelled by half the fold, the upper face the shorter one inside the bend", () => {
    const half = SWEEP / planks.length / 2;
    expect(design.seams).toHaveLength(planks.length - 1);
    for (const seam of design.seams) expect(seam.bevelRad).toBeCloseTo(half, 4);
    const seamEdges = design.strips.flatMap(({ edges }) => edges.filter(({ role }) => role === "seam"));
    expect(seamEdges).toHaveLength(2 * (planks.length - 1));
    for (const { bevelRad } of seamEdges) expect(at(bevelRad, 0)).toBeCloseTo(half, 4);
  });

  it("comes to the jig plank beside plank, as many in a step as an evening allows, each glued to the one before", () => {
    const onJig = design.glueUp.filter(({ place, kind }) => place === "jig" && kind !== "dry fit");
    const came = onJig.flatMap(({ adds }) => adds);
    expect(came.toSorted()).toEqual(design.strips.map(({ id }) => id));
    expect(onJig.length).toBeLessThan(planks.length);
    for (const { workMinutes, how } of onJig) {
      expect(workMinutes).toBeLessThan(180);
      expect(how.join(" ")).toContain("like hinges");
    }
    expect(onJig.flatMap(({ joins }) => joins).toSorted()).toEqual(
      design.seams.map(({ id }) => id).toSorted(),
    );
  });
});
