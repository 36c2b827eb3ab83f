import { describe, expect, it } from "vitest";
import {
  countFor,
  holdDownN,
  holdingMomentPerMm,
  type Layer,
  outerStrain,
  overBendRadiusMm,
  radiusAfterMm,
  springbackShare,
  stiffnessOf,
  washerN,
  weightN,
} from "../../core/bending/index.ts";

/** Sandwich with two 0.6 mm skins of 20 GPa on 10 mm foam of 75 MPa: the panel that the closed forms below are worked for. */
const SKIN: Layer = { modulusMPa: 20_000, thicknessMm: 0.6 };
const FOAM: Layer = { modulusMPa: 75, thicknessMm: 10 };

describe("holding a bend", () => {
  // S6, from the formulas M = E t³ / (12 R) and ε = t / (2 R): N m for each metre of width is N mm for each mm.
  it.each([
    { modulusMPa: 75, thicknessMm: 10, radiusMm: 1000, moment: 6.25, strain: 0.005 },
    { modulusMPa: 20, thicknessMm: 10, radiusMm: 500, moment: 10 / 3, strain: 0.01 },
    { modulusMPa: 75, thicknessMm: 5, radiusMm: 500, moment: 1.5625, strain: 0.005 },
  ])("takes $moment N m a metre", ({ moment, strain, ...foam }) => {
    expect(holdingMomentPerMm(foam)).toBeCloseTo(moment, 9);
    expect(outerStrain(foam)).toBeCloseTo(strain, 12);
    // S7: the line force at an end held down on a lever of 100 mm, N for each metre.
    expect(holdDownN(holdingMomentPerMm(foam), 1000, 100)).toBeCloseTo(moment * 10, 9);
  });

  it("of 10 mm foam over 600 mm at a radius of 1 m takes about 10 N at an end 300 mm away", () => {
    const moment = holdingMomentPerMm({ modulusMPa: 60, thicknessMm: 10, radiusMm: 1000 });
    expect(holdDownN(moment, 600, 300)).toBeCloseTo(10, 9);
  });

  it("asks for whole bags, and never for pins that carry nothing", () => {
    expect(weightN(5)).toBeCloseTo(49.03325, 9);
    expect([0, 10, 49, 50].map((force) => countFor(force, weightN(5)))).toEqual([0, 1, 1, 2]);
    expect(countFor(10, 0)).toBe(Number.POSITIVE_INFINITY);
  });

  it("under a washer crushes nothing below the foam's strength on the washer's ring", () => {
    expect(washerN(40, 0.2)).toBeCloseTo(0.2 * Math.PI * (20 * 20 - 5 * 5), 9);
  });
});

describe("springback", () => {
  // S1, S2. PUBLISHED: boat builders' worked figures, a rise of 3 in (and 1 in) in n equal layers gives back 1/n² of it.
  it.each([
    [3, 4, 0.1875],
    [3, 8, 0.046875],
    [1, 4, 0.0625],
    [1, 8, 0.015625],
  ])("of a rise of %d in %d layers is %d", (rise, count, expected) => {
    const layers = Array.from({ length: count }, () => ({ modulusMPa: 9000, thicknessMm: 3 }));
    expect(rise * springbackShare(layers, layers)).toBeCloseTo(expected, 12);
  });

  // S3, derived by elastic superposition: 6.25 / 681.13.
  it("of foam with both skins on is under one per cent", () => {
    expect(stiffnessOf([SKIN, FOAM, SKIN])).toBeCloseTo(681_130, 6);
    const share = springbackShare([FOAM], [SKIN, FOAM, SKIN]);
    expect(share).toBeCloseTo(0.009175928, 8);
    expect(radiusAfterMm(2000, share)).toBeCloseTo(2018.522, 3);
    expect(radiusAfterMm(overBendRadiusMm(2000, share), share)).toBeCloseTo(2000, 9);
  });

  // S4, derived: taken off after one skin.
  it("of foam with one skin on is about 24 per cent", () => {
    expect(stiffnessOf([SKIN, FOAM])).toBeCloseTo(26_438.2353, 3);
    expect(springbackShare([FOAM], [SKIN, FOAM])).toBeCloseTo(0.2364, 7);
  });
});
