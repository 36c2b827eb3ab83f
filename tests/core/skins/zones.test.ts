import { describe, expect, it } from "vitest";
import { designTray } from "../../../core/design.ts";
import { wordProblem } from "../../../core/foundation/index.ts";
import type { Project } from "../../../core/project/index.ts";
import { patchMaps } from "../../../core/skins/index.ts";
import { readExample } from "../../read-example.ts";
import { isCovered } from "./point-in-cloth.ts";

type Zone = NonNullable<NonNullable<Project["laminate"]>["zones"]>[number];

const demo = readExample("hill-climb-floor");
const zone = (changes: Partial<Zone>): Zone => ({
  id: "z",
  name: "Front mount",
  face: "upper",
  shape: { kind: "spot", x: 400, y: 120, radiusMm: 80 },
  clothId: "glass-160",
  warpRad: 0,
  plies: 3,
  stepMm: 15,
  ...changes,
});
const withZones = (...zones: readonly Zone[]) =>
  designTray({ ...demo, laminate: { zones: zones.map((one, i) => ({ ...one, id: `z${i}` })) } });
const patchesOf = ({ skins }: ReturnType<typeof designTray>) =>
  skins.faces.flatMap(({ fields }) => fields.flatMap(({ patches }) => patches));
const zonePatches = (design: ReturnType<typeof designTray>) =>
  patchesOf(design).filter(({ zoneId }) => zoneId !== undefined);

const plain = designTray(demo);
const tray = withZones(
  zone({}),
  zone({
    name: "Skid",
    face: "lower",
    shape: { kind: "rectangle", x: 900, y: 0, lengthMm: 300, widthMm: 120 },
    plies: 2,
  }),
  zone({
    name: "Rear edge",
    face: "lower",
    shape: { kind: "band", itemId: "s3", edgeId: "n2", widthMm: 60 },
    plies: 2,
  }),
);

describe("reinforcement", () => {
  it("of a round spot is cloth of that circle, each ply smaller by the step, on both hands", () => {
    const own = zonePatches(tray).filter(({ zoneId }) => zoneId?.startsWith("Z1"));
    expect(own.map(({ id }) => id).sort()).toEqual(["Z1L.1", "Z1L.2", "Z1L.3", "Z1R.1", "Z1R.2", "Z1R.3"]);
    for (const { id, areaMm2 } of own) {
      const radiusMm = 80 - 15 * (Number(id.at(-1)) - 1);
      expect(areaMm2 / (Math.PI * radiusMm ** 2)).toBeCloseTo(1, 4);
    }
  });

  it("has the area that places sampled over it count, whatever edge it ends at", () => {
    const edge = withZones(
      zone({ shape: { kind: "spot", x: 1390, y: 150, radiusMm: 70 }, plies: 2, stepMm: 10 }),
    );
    for (const patch of [...zonePatches(tray), ...zonePatches(edge)]) {
      const us = patch.outlineMm.map(({ u }) => u);
      const vs = patch.outlineMm.map(({ v }) => v);
      let count = 0;
      const step = Math.sqrt(
        ((Math.max(...us) - Math.min(...us)) * (Math.max(...vs) - Math.min(...vs))) / 40_000,
      );
      for (let u = Math.min(...us) + step / 3; u < Math.max(...us); u += step)
        for (let v = Math.min(...vs) + step / 3; v < Math.max(...vs); v += step)
          if (isCovered({ u, v }, patch)) count += 1;
      expect(Math.abs((count * step * step) / patch.areaMm2 - 1)).toBeLessThan(0.02);
    }
    // The centre floor ends at x 1400: the spot keeps its half and 10 mm.
    const cut = zonePatches(edge).find(({ id }) => id === "Z1R.1")?.areaMm2 ?? 0;
    const whole = Math.PI * 70 ** 2;
    expect(cut).toBeGreaterThan(whole / 2);
    expect(cut).toBeLessThan(whole / 2 + 2 * 70 * 12);
  });

  it("of a rectangle on the centre line is one piece; of a band one along the edge on each hand", () => {
    const ids = zonePatches(tray).map(({ id }) => id);
    expect(ids.filter((id) => id.startsWith("Z2")).sort()).toEqual(["Z2.1", "Z2.2"]);
    const areaOf = (id: string) => zonePatches(tray).find((one) => one.id === id)?.areaMm2 ?? 0;
    expect(areaOf("Z2.1")).toBeCloseTo(300 * 120, 0);
    expect(areaOf("Z2.2")).toBeCloseTo(270 * 90, 0);
    expect(ids.filter((id) => id.startsWith("Z3")).sort()).toEqual(["Z3.1", "Z3.2"]);
    // The front edge of the lip is 420 mm long over both hands; behind it the lip is wider.
    expect(Math.abs(areaOf("Z3.1") / (420 * 60) - 1)).toBeLessThan(0.05);
    expect(Math.abs(areaOf("Z3.2") / (420 * 45) - 1)).toBeLessThan(0.05);
  });

  it("adds the mass of its cloth and as much resin, to the face, to the tray and to its part", () => {
    const cloth = zonePatches(tray).reduce((sum, { areaMm2 }) => sum + areaMm2, 0) / 1e6;
    const addedKg = cloth * 0.16 * 2;
    expect(tray.skins.massKg - plain.skins.massKg).toBeCloseTo(addedKg, 6);
    const partKg = ({ weight }: typeof tray) => weight.parts.reduce((sum, one) => sum + one.massKg.likely, 0);
    expect(partKg(tray) - partKg(plain)).toBeCloseTo(addedKg, 6);
    expect(tray.skins.mixedKg - plain.skins.mixedKg).toBeCloseTo((cloth * 0.16) / 0.85, 6);
    for (const { sessions, mixedKg } of tray.skins.faces)
      expect(sessions.reduce((sum, one) => sum + one.mixedKg, 0)).toBeCloseTo(mixedKg, 9);
    expect(tray.skins.cloths.find(({ clothId }) => clothId === "glass-160")?.areaMm2).toBeCloseTo(
      cloth * 1e6,
      3,
    );
  });

  it("is laid in a session of a field that it lies on, after its plies, and named in its steps", () => {
    for (const { zones, sessions, fields } of tray.skins.faces)
      for (const { id, fieldId, partId } of zones) {
        const session = sessions.find(({ fieldIds }) => fieldIds.includes(fieldId));
        expect(fields.find((field) => field.id === fieldId)?.partId).toBe(partId);
        const titles = session?.steps.map(({ title }) => title) ?? [];
        const own = titles.findIndex((title) => title.includes(`reinforcement ${id},`));
        expect(own).toBeGreaterThan(titles.findIndex((title) => title.startsWith("Lay ply 2")));
        expect(own).toBeLessThan(titles.findIndex((title) => title.startsWith("Lay peel ply")));
      }
    const film = (tray.project.materials.resins[0]?.filmMinutes ?? 0) * 2 ** ((22 - 20) / 10);
    for (const { sessions } of tray.skins.faces)
      for (const { workMinutes } of sessions) expect(workMinutes).toBeLessThanOrEqual(0.6 * film + 1e-9);
  });

  it("tells its thickness: three plies of 160 g/m² at half fibre over two of 280", () => {
    const t = (gsm: number) => gsm / 2550 + gsm / 1150;
    const laid = tray.skins.faces.flatMap(({ zones }) => zones).find(({ id }) => id === "Z1R");
    expect(laid?.thicknessMm).toBeCloseTo(3 * t(160), 6);
    expect(laid?.totalThicknessMm).toBeCloseTo(3 * t(160) + 2 * t(280), 6);
  });

  it("moves the seams of the plies below aside where that costs no piece more; where one stays it is said", () => {
    const seamAt = (design: ReturnType<typeof designTray>) => {
      const [a, b] = ["S2R-U.1a", "S2R-U.1b"].map((id) => patchesOf(design).find((one) => one.id === id));
      return [
        Math.min(...(b?.outlineMm ?? []).map(({ u }) => u)),
        Math.max(...(a?.outlineMm ?? []).map(({ u }) => u)),
      ];
    };
    const [from = 0, to = 0] = seamAt(plain);
    const over = withZones(zone({ shape: { kind: "spot", x: (from + to) / 2, y: 450, radiusMm: 40 } }));
    const laid = over.skins.faces.flatMap(({ zones }) => zones).find(({ id }) => id === "Z1R");
    const patches = patchesOf(over);
    const under = (ply: number) =>
      patches.filter(
        (one) =>
          one.ply === ply &&
          one.fieldId === laid?.fieldId &&
          (patches.find(({ id }) => id === "Z1R.1")?.outlineMm ?? []).some((place) => isCovered(place, one)),
      ).length;
    for (const ply of [1, 2]) expect(under(ply) > 1).toBe(laid?.overLapsOf.includes(ply));
    expect(laid?.overLapsOf).toEqual([]);
    // So large a zone no seam can leave.
    const large = withZones(
      zone({ shape: { kind: "rectangle", x: 1000, y: 450, lengthMm: 1900, widthMm: 60 } }),
    );
    expect(large.skins.faces.flatMap(({ zones }) => zones)[0]?.overLapsOf).toEqual([1, 2]);
    expect(patches.length).toBe(patchesOf(plain).length + 6);
  });

  it("is drawn on the maps", () => {
    const plies = patchMaps(tray, tray.skins).find(({ id }) => id === "lower face")?.plies ?? [];
    expect(plies.map(({ name }) => name)).toEqual(["1", "2", "reinforcement 1", "reinforcement 2"]);
    const spots = plies[2]?.patches.find(({ patchId }) => patchId === "Z2.1")?.loopsMm.flat() ?? [];
    expect(Math.abs(Math.min(...spots.map(({ x }) => x)) - 750)).toBeLessThan(2);
    expect(Math.abs(Math.max(...spots.map(({ y }) => y)) - 60)).toBeLessThan(1);
  });

  it("that cannot be is named, and the rest is laid", () => {
    const design = withZones(
      zone({ shape: { kind: "spot", x: 5000, y: 0, radiusMm: 50 } }),
      zone({ plies: 0 }),
      zone({ stepMm: 50, plies: 4 }),
      zone({ clothId: "none" }),
      zone({ shape: { kind: "band", itemId: "s2", edgeId: "gone", widthMm: 40 } }),
      zone({ shape: { kind: "spot", x: 400, y: 120, radiusMm: Number.NaN } }),
      zone({}),
    );
    const told = new Map(design.problems.map((problem) => [problem.place.setting ?? "", problem]));
    const kindAt = (setting: string) => told.get(`laminate.zones.${setting}`)?.kind;
    const wordsAt = (index: number) => {
      const problem = told.get(`laminate.zones.${index}`);
      return problem ? wordProblem(problem) : "";
    };
    expect(wordsAt(0)).toContain("Zone 1 (Front mount) lies where the upper face of no part is");
    expect(kindAt("1.plies")).toBe("number-out-of-range");
    expect(wordsAt(2)).toContain("nothing left at ply 3");
    expect([kindAt("3"), kindAt("4")]).toEqual(["unknown-reference", "unknown-reference"]);
    expect(kindAt("5.radiusMm")).toBe("number-out-of-range");
    const laid = new Set(zonePatches(design).map(({ zoneId }) => zoneId?.slice(0, 2)));
    expect([...laid].sort()).toEqual(["Z2", "Z3", "Z6", "Z7"]);
  });
});
