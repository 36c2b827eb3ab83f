import { describe, expect, it } from "vitest";
import { arcOf, type BentCurve, layPlanks, longestChordMm } from "../../core/bending/index.ts";
import { at, toRadians } from "../../core/foundation/index.ts";

const SPIRAL: BentCurve = { lengthMm: 240, turnAt: (s) => s / 150 - (s * s) / 120000 };

describe("planks", () => {
  // G1 (METHOD: h = L²/8R in railway notes), G4 (CLOSED FORM 2 √(2Rs − s²)).
  it("are as wide as the permitted sagitta lets them", () => {
    expect(longestChordMm(1000, 0.1)).toBeCloseTo(28.2835641318417, 9);
    expect(longestChordMm(500, 0.1)).toBeCloseTo(19.9989999749987, 9);
    expect(longestChordMm(300, 0.1)).toBeCloseTo(15.490642336585, 9);
    expect(longestChordMm(1000, 1.250782228091054)).toBeCloseTo(100, 9);
    expect(longestChordMm(300, 0.2605297930549287)).toBeCloseTo(25, 6);
  });

  it("of a whole number that just fits the sagitta keep it", () => {
    const turn = 5 * 2 * Math.asin(28.2835641318417 / 2000);
    const planks = layPlanks(arcOf(1000, turn * (1 - 1e-7)), 0.1);
    expect(planks).toHaveLength(5);
    for (const { widthMm } of planks) expect(widthMm).toBeCloseTo(28.28356, 3);
    expect(layPlanks(arcOf(1000, turn * (1 + 1e-6)), 0.1)).toHaveLength(6);
  });

  it.each([
    ["a circle", arcOf(310, toRadians(90))],
    ["a tightening bend", SPIRAL],
  ])("cover all of %s, edge to edge, and stand off it alike", (_, curve) => {
    const planks = layPlanks(curve, 0.5);
    expect(at(planks, 0).fromMm).toBe(0);
    expect(at(planks, -1).toMm).toBe(curve.lengthMm);
    expect(planks.slice(1).map(({ fromMm }) => fromMm)).toEqual(planks.slice(0, -1).map(({ toMm }) => toMm));
    const sagittas = planks.map(({ sagittaMm }) => sagittaMm);
    expect(Math.max(...sagittas)).toBeLessThanOrEqual(0.5);
    expect(Math.min(...sagittas) / Math.max(...sagittas)).toBeGreaterThan(0.98);
  });

  it("have bevels that fold by the whole turn of the bend", () => {
    const planks = layPlanks(SPIRAL, 0.5);
    const inner = planks.slice(1).map((plank, i) => plank.bevelsRad[0] + at(planks, i).bevelsRad[1]);
    const ends = 2 * (at(planks, 0).bevelsRad[0] + at(planks, -1).bevelsRad[1]);
    const folded = inner.reduce((sum, rad) => sum + rad, ends);
    expect(folded).toBeCloseTo(SPIRAL.turnAt(240), 9);
  });
});
