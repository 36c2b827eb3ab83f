import { describe, expect, it } from "vitest";
import { cutStrips } from "../../../core/cutting/index.ts";
import type { Rib } from "../../../core/jig/index.ts";
import type { Joint } from "../../../core/joints/index.ts";
import { NO_PANELS } from "../../../core/panels/index.ts";
import { foldPlates } from "../../../core/plates/index.ts";
import { type Plate, resolveLines } from "../../../core/project/index.ts";
import { type Tray, totalTray } from "../../../core/totals/index.ts";
import { flatPart, rectangle } from "../cutting/flat-parts.ts";
import { plainProject } from "../cutting/plain-project.ts";
import { bareRib } from "../jig/bare-rib.ts";
import { planNode } from "../trays.ts";
import { jigOf } from "./jig-of.ts";

const rib = (changes: Partial<Rib> = {}): Rib =>
  bareRib({
    id: "A1",
    name: "Rib A1",
    runs: "across",
    atMm: 0,
    thicknessMm: 12,
    stationFace: "front",
    heights: [],
    outlineMm: [
      { u: 0, v: 0 },
      { u: 500, v: 0 },
      { u: 500, v: 100 },
      { u: 0, v: 100 },
    ],
    cut: "square",
    mostProudMm: 0,
    straightTop: true,
    sameAs: "A1",
    ...changes,
  });

const joint: Joint = {
  id: "S1R/S2R",
  kind: "corner",
  partIds: ["S1R", "S2R"],
  edgeIds: ["e1", "e3"],
  lengthMm: 500,
  foldRad: [0.1, 0.1],
  cut: "mitre",
  bevelRad: [0.05, 0.05],
  setBackMm: [0, 0],
  stations: [],
  from: { x: 0, y: 0 },
  to: { x: 0, y: 500 },
};

const project = plainProject();
const area = { flatAreaMm2: 500 * 500, spaceAreaMm2: 500 * 500 };
const parts = [
  flatPart([rectangle(500, 500)], area),
  flatPart([rectangle(500, 500)], { ...area, id: "S2R" }),
];
const { strips } = cutStrips(parts, project);
const tray: Tray = {
  parts,
  strips,
  seams: [],
  joints: [joint],
  jig: jigOf([rib(), rib({ cut: "bevel" })]),
  plates: [],
  panels: NO_PANELS,
};

describe("the totals", () => {
  it("weigh the foam by its own density: half a square metre of 10 mm at 32 kg/m³ is 160 g", () => {
    expect(totalTray(tray, project).foamMassKg).toBeCloseTo(0.16, 12);
    expect(totalTray(tray, project).foamAreaMm2).toBe(500_000);
  });

  it("weigh the glue by joint face and spread: 0.5 m of 10 mm at 150 g/m² is 0.75 g", () => {
    expect(totalTray(tray, project).glueMassKg).toBeCloseTo(0.00075, 12);
    expect(totalTray(tray, project).jointLengthMm).toBe(500);
  });

  it("count the fewest stock sheets by area, a full sheet as one", () => {
    expect(totalTray(tray, project).stock).toEqual([
      { stockId: "xps10", name: "XPS 32, 10 mm, 1250 × 600", areaMm2: 500_000, sheetsAtLeast: 1 },
    ]);
    const full = cutStrips([flatPart([rectangle(1250, 600)])], project).strips;
    expect(totalTray({ ...tray, strips: full }, project).stock[0]?.sheetsAtLeast).toBe(1);
    const more = [...full, ...full.map((strip) => ({ ...strip, id: "x" }))];
    expect(totalTray({ ...tray, strips: more }, project).stock[0]?.sheetsAtLeast).toBe(2);
  });

  // CLOSED FORM: 300 × 200 × 2 mm of 2670 kg/m³ is 0.3204 kg; the mirrored tray has it once more on the left.
  it("weigh the metal apart from the foam, on every hand", () => {
    const [a, b] = [planNode("b1", 100, 100), planNode("b2", 400, 100)];
    const [c, d] = [planNode("b3", 400, 300), planNode("b4", 100, 300)];
    const plate: Plate = {
      kind: "plate",
      id: "plate",
      number: 1,
      name: "Plate",
      outline: { closed: true, elements: [a, b, c, d] },
      zMm: 40,
      metalId: "metal",
      thicknessMm: 2,
      wings: [],
      bond: { lineMm: 0.5, step: "ramp" },
    };
    const metal = {
      id: "metal",
      name: "Sheet",
      densityKgPerM3: 2670,
      kFactor: 0.4,
      leastRadiusRatio: 1,
      origins: {},
    };
    const given = plainProject({ items: [plate], materials: { ...project.materials, metals: [metal] } });
    const { plates } = foldPlates(given, resolveLines(given));
    const hands = given.symmetry === "mirrored" ? 2 : 1;
    const totals = totalTray({ ...tray, plates }, given);
    expect(plates.flatMap((one) => one.parts)).toHaveLength(hands);
    expect(totals.metalMassKg).toBeCloseTo(0.3204 * hands, 9);
    expect(totals.foamMassKg).toBe(totalTray(tray, project).foamMassKg);
  });

  it("add up the rib board: two ribs of 0.05 m² in 12 mm at 750 kg/m³ weigh 0.9 kg", () => {
    const totals = totalTray(tray, project);
    expect(totals.ribBoardAreaMm2).toBe(100_000);
    expect(totals.ribBoardsAtLeast).toBe(1);
    expect(totals.ribBoardMassKg).toBeCloseTo(0.9, 12);
  });

  // Rates: common practice. Templates 0.5 m² × 10; 4 m of straight cuts × 6; jig 60 + 2 × 40 + 10 for the
  // bevel; one joint 15 + 0.5 m × (10 glue + 10 fair): 5 + 24 + 150 + 25 = 204 minutes.
  it("add up hands-on time at the rates of common practice", () => {
    expect(totalTray(tray, project).handsOnHours).toBeCloseTo(204 / 60, 9);
  });

  it("are zero for an empty tray", () => {
    const empty: Tray = {
      parts: [],
      strips: [],
      seams: [],
      joints: [],
      jig: jigOf([]),
      plates: [],
      panels: NO_PANELS,
    };
    expect(totalTray(empty, project)).toEqual({
      partCount: 0,
      stripCount: 0,
      foamAreaMm2: 0,
      foamMassKg: 0,
      metalMassKg: 0,
      glueMassKg: 0,
      jointLengthMm: 0,
      stock: [],
      ribBoardAreaMm2: 0,
      ribBoardsAtLeast: 0,
      ribBoardMassKg: 0,
      handsOnHours: 0,
    });
  });
});
