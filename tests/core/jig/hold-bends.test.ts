import { describe, expect, it } from "vitest";
import { designTray } from "../../../core/design.ts";
import { holdBends } from "../../../core/jig/index.ts";
import type { Project } from "../../../core/project/index.ts";
import { rectangle, section, sideNode, type TraySettings, tray } from "../trays.ts";

const RISE = 0.2;

/** Level, up a radius of 1000 in the middle of 10 mm foam, and straight on; 600 wide, 300 to the next rib. */
function ramp(rearMm: number, settings: TraySettings = {}, changes: Partial<Project["bending"]> = {}) {
  const tangentMm = 1000 * Math.tan(RISE / 2);
  const profile = [
    sideNode("a", 0, 100),
    sideNode("b", 500, 100, { radiusMm: 1000 }),
    sideNode("c", 500 + rearMm * Math.cos(RISE), 100 + rearMm * Math.sin(RISE)),
  ];
  const project = tray({ p: profile }, [section(1, rectangle(0, 500 + rearMm * Math.cos(RISE), 0, 600))], {
    drawnFace: "neutral",
    thicknessMm: 10,
    skinMm: 0.6,
    ...settings,
  });
  const foams = project.materials.foams.map((foam) => ({ ...foam, modulusMPa: 60 }));
  const design = designTray({
    ...project,
    materials: { ...project.materials, foams },
    bending: { ...project.bending, skinModulusMPa: 20_000, ...changes },
  });
  // On a lever of one rib spacing, as where no ribs are known to carry the part.
  const [hold] = holdBends(design.parts, design.seams, design.project);
  if (!hold) throw new Error("no bend");
  return { hold, tangentMm, design };
}

describe("a bend of R 1000 in 10 mm foam of 60 MPa, 600 wide", () => {
  it("takes about 10 N at a rib 300 away: one sandbag of 5 kg", () => {
    const { hold } = ramp(500);
    expect(hold.holdDown).toMatchObject({ leverMm: 300, by: "sandbags", count: 1 });
    expect(hold.holdDown?.momentPerMm).toBeCloseTo(5, 9);
    expect(hold.holdDown?.widthMm).toBeCloseTo(600, 6);
    expect(hold.holdDown?.forceN).toBeCloseTo(10, 6);
  });

  it("is held by no pins until one was tested", () => {
    const held = (pinN: number) => ramp(500, {}, { pinN, sandbagKg: 0.1 }).hold.holdDown?.count;
    expect(held(0)).toBe(11);
    expect(held(0.5)).toBe(5);
    expect(ramp(500, {}, { holdBy: "straps", strapN: 0 }).hold.holdDown?.count).toBeNull();
  });

  it("is held by screws no harder than their washers may press on the foam", () => {
    const { hold } = ramp(500, {}, { holdBy: "screws", washerMm: 20, crushMPa: 0.02 });
    expect(hold.holdDown?.eachN).toBeCloseTo(0.02 * Math.PI * (100 - 6.25), 9);
    expect(hold.holdDown?.count).toBe(2);
  });

  it("gives back much with one skin and little with both", () => {
    const { springback } = ramp(500).hold;
    // The foam's E t³ / 12 over that of the glued section: 5000 over what skins of 20 GPa add to it.
    expect(springback?.oneSkin).toBeGreaterThan(0.15);
    expect(springback?.bothSkins).toBeLessThan(0.01);
    expect((springback?.overBentOneMm ?? 0) / (1 - (springback?.oneSkin ?? 0))).toBeCloseTo(1000, 6);
  });
});

describe("a bend that wants care", () => {
  const kinds = (rearMm: number, settings: TraySettings = {}) =>
    ramp(rearMm, settings).hold.cares.map(({ kind }) => kind);

  it("ends too near to a free edge to be held there", () => {
    expect(kinds(500)).toEqual([]);
    expect(kinds(120)).toEqual(["near the edge"]);
  });

  it("has a slot within three pitches of an edge", () => {
    expect(kinds(500, { thicknessMm: 30 })).toEqual([]);
    expect(kinds(110, { thicknessMm: 30 })).toEqual(["slot near an edge"]);
  });

  it("is followed at once by one the other way", () => {
    const profile = [
      sideNode("a", 0, 100),
      sideNode("b", 400, 100, { radiusMm: 1000 }),
      sideNode("c", 400 + 220 * Math.cos(RISE), 100 + 220 * Math.sin(RISE), { radiusMm: 1000 }),
      sideNode("d", 1200, 100 + 220 * Math.sin(RISE)),
    ];
    const design = designTray(
      tray({ p: profile }, [section(1, rectangle(0, 1200, 0, 300))], { thicknessMm: 10 }),
    );
    expect(design.holds.map(({ cares }) => cares.map(({ kind }) => kind))).toEqual([["wrong way first"], []]);
  });
});

it("on its own ribs a bend is held down by the one that it lifts off most, with what that one gives", () => {
  const { design } = ramp(500);
  const most = Math.max(...design.lie.forces.map(({ holdDownN }) => holdDownN));
  expect(most).toBeGreaterThan(1);
  expect(design.holds[0]?.holdDown?.forceN).toBeCloseTo(most, 9);
  const { ribId } = design.holds[0]?.holdDown ?? {};
  expect(design.lie.forces.find((force) => force.ribId === ribId)?.holdDownN).toBe(most);
});
