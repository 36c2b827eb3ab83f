import { describe, expect, it } from "vitest";
import { designTray } from "../../../core/design.ts";
import { levelOf, wordProblem } from "../../../core/foundation/index.ts";
import { laminateOf, type Project } from "../../../core/project/index.ts";
import { readExample } from "../../read-example.ts";

const demo = readExample("hill-climb-floor");
type Coupon = NonNullable<NonNullable<Project["laminate"]>["coupons"]>[number];
/** 300 by 300 mm, four plies of 280 g/m²: 100.8 g of cloth, on a film of 20 g. */
const onFilm: Coupon = {
  on: "film",
  clothId: "glass-280",
  plies: 4,
  lengthMm: 300,
  widthMm: 300,
  dryKg: 0.1208,
  curedKg: 0.1208 + 0.0672,
};
/** The same size, one ply of 25.2 g on 28.8 g of foam. */
const onFoam: Coupon = { ...onFilm, on: "foam", plies: 1, dryKg: 0.054, curedKg: 0.054 + 0.0168 + 0.0099 };
const withCoupons = (...coupons: readonly Coupon[]): Project => ({ ...demo, laminate: { coupons } });

describe("weighed coupons", () => {
  it("100.8 g of cloth that took 67.2 g of resin are 60 % fibre; foam that took 9.9 g more on 0.09 m² drinks 110 g/m²", () => {
    const { fibreMassShare, preWetKgPerM2 } = laminateOf(withCoupons(onFilm, onFoam));
    expect(fibreMassShare).toBeCloseTo(0.6, 9);
    expect(preWetKgPerM2).toBeCloseTo(0.11, 9);
  });

  it("replace the usual figures in plies, resin and mass: less resin at more fibre", () => {
    const chosen = { lower: [0, 1].map(() => ({ clothId: "glass-280", warpRad: 0 })) };
    const usual = designTray({ ...demo, laminate: chosen }).skins;
    const weighed = designTray({ ...demo, laminate: { ...chosen, coupons: [onFilm] } }).skins;
    const [before, after] = [usual.faces[0], weighed.faces[0]];
    expect(after?.plies[1]?.inPlyKgPerM2).toBeCloseTo((0.28 * 0.4) / 0.6, 9);
    expect(after?.mixedKg ?? 0).toBeLessThan(before?.mixedKg ?? 0);
    expect(after?.massKg ?? 0).toBeLessThan(before?.massKg ?? 0);
    expect(after?.thicknessMm ?? 0).toBeLessThan(before?.thicknessMm ?? 0);
  });

  it("that no laminate has are told and not used", () => {
    for (const wrong of [
      { ...onFilm, curedKg: 0.1 },
      { ...onFilm, clothId: "gone" },
      { ...onFilm, lengthMm: Number.NaN },
      { ...onFoam, curedKg: 0.5 },
    ]) {
      const { problems, skins } = designTray(withCoupons(wrong));
      expect(problems.map(({ kind }) => kind)).toEqual(["coupon-not-believable"]);
      expect(skins.mixedKg).toBeCloseTo(designTray(demo).skins.mixedKg, 12);
      for (const problem of problems) {
        expect(levelOf(problem)).toBe("look");
        expect(wordProblem(problem)).toMatch(/^Coupon 1 (gives|is of no cloth)/);
      }
    }
  });
});

describe("resin, foam and shop", () => {
  const resins = demo.materials.resins.map((resin) => ({ ...resin, kind: "polyester" as const }));

  it("polyester on polystyrene is refused, and no session planned; on another foam it is not", () => {
    const dissolving = designTray({ ...demo, materials: { ...demo.materials, resins } });
    expect(dissolving.problems.map(({ kind, name }) => [kind, name])).toEqual([
      ["resin-dissolves-foam", "XPS board"],
    ]);
    expect(dissolving.skins.faces.flatMap(({ sessions }) => sessions)).toEqual([]);
    expect(dissolving.skins.tasks).toEqual([]);
    const foams = demo.materials.foams.map((foam) => ({ ...foam, family: "other" as const }));
    const other = designTray({ ...demo, materials: { ...demo.materials, resins, foams } });
    expect(other.problems).toEqual([]);
  });

  it("damp air is told: at 20 °C from 83 % on the surface is less than 3 °C above the dew point", () => {
    const kinds = (humidityShare: number) =>
      designTray({ ...demo, laminate: { humidityShare } }).problems.map(({ kind }) => kind);
    expect(kinds(0.81)).toEqual([]);
    expect(kinds(0.84)).toEqual(["shop-too-damp"]);
    expect(kinds(-1)).toEqual(["number-out-of-range"]);
  });
});

describe("hands", () => {
  it("that do not reach the middle of the tray from its edge are told; the demo is 1.3 m wide", () => {
    const far = (reachMm: number) =>
      designTray({ ...demo, laminate: { reachMm } }).problems.flatMap((problem) =>
        problem.kind === "skin-out-of-reach" ? [problem.farthestMm] : [],
      );
    expect(far(800)).toEqual([]);
    const [farthestMm = 0] = far(400);
    expect(farthestMm).toBeGreaterThan(500);
    expect(farthestMm).toBeLessThan(700);
  });

  it("a finish of an edge that is gone is told", () => {
    const edgeFinishes = [{ itemId: "s1", edgeId: "gone", finish: "flange" as const }];
    const { problems } = designTray({ ...demo, laminate: { edgeFinishes } });
    expect(problems.map(({ kind }) => kind)).toEqual(["unknown-reference"]);
  });
});

describe("the steps of a session", () => {
  const { faces } = designTray(demo).skins;

  it("name every patch of it once, ply by ply, between making ready and peel ply", () => {
    for (const { fields, sessions } of faces)
      for (const { fieldIds, steps } of sessions) {
        const own = fields.filter(({ id }) => fieldIds.includes(id)).flatMap(({ patches }) => patches);
        const laid = steps.flatMap(({ patchIds }) => patchIds);
        expect([...laid].sort()).toEqual(own.map(({ id }) => id).sort());
        const plies = laid.map((id) => own.find((patch) => patch.id === id)?.ply ?? 0);
        expect(plies).toEqual([...plies].sort());
        expect(steps[0]?.title).toMatch(/^Make the/);
        expect(steps.every(({ why }) => why.length > 20)).toBe(true);
      }
  });

  it("take peel ply off only where a session was laid before", () => {
    const [lower] = faces;
    expect(lower?.sessions[0]?.steps[0]?.title).not.toContain("strip the peel ply");
    expect(lower?.sessions[1]?.steps[0]?.title).toContain("strip the peel ply");
  });
});
