import { describe, expect, it } from "vitest";
import { bondPreparation, plateUnderFoam } from "../../../core/plates/index.ts";
import type { Plate } from "../../../core/project/index.ts";
import { plateOf, projectOf, rectangle } from "./plates.ts";

const underFoam = (step: Plate["bond"]["step"], thicknessMm: number, lowerMm: number) => {
  const plate = plateOf(rectangle(0, 300, 0, 200), [], { thicknessMm, bond: { lineMm: 0.5, step } });
  return plateUnderFoam({ ...projectOf(plate), skins: { lowerMm, upperMm: 0.8 } }, plate);
};

describe("foam over a plate", () => {
  it("stands metal and bond line above the air side, a step above the foam on the skin", () => {
    const under = underFoam("ramp", 1.5, 0.8);
    expect(under.foamOverPlateMm).toBe(2);
    expect(under.foamBesideMm).toBe(0.8);
    expect(under.stepMm).toBeCloseTo(1.2, 12);
  });

  // Common practice: ramps of 20 : 1.
  it("meets it over a ramp twenty times as long as high, a rebate as deep or a shim as thick as the step", () => {
    expect(underFoam("ramp", 1.5, 0.8).measure).toEqual({
      kind: "ramp",
      where: "beside the plate",
      heightMm: expect.closeTo(1.2, 12),
      lengthMm: expect.closeTo(24, 12),
    });
    expect(underFoam("rebate", 1.5, 0.8).measure).toEqual({
      kind: "rebate",
      where: "over the plate",
      depthMm: expect.closeTo(1.2, 12),
    });
    expect(underFoam("shim", 1.5, 0.8).measure).toEqual({
      kind: "shim",
      where: "beside the plate",
      thicknessMm: expect.closeTo(1.2, 12),
    });
  });

  it("beside a skin thicker than plate and bond line it is the other way about", () => {
    const under = underFoam("rebate", 1, 2.5);
    expect(under.stepMm).toBeCloseTo(-1, 12);
    expect(under.measure).toMatchObject({ kind: "rebate", where: "beside the plate" });
    expect(underFoam("shim", 1, 2.5).measure).toMatchObject({ kind: "shim", where: "over the plate" });
  });

  it("needs nothing where metal and bond line are as thick as the skin", () => {
    expect(underFoam("ramp", 1, 1.5).measure).toEqual({ kind: "none" });
  });
});

describe("the preparation of a bond on metal", () => {
  const steps = bondPreparation(0.5);

  it("degreases before it abrades, coats and abrades wet, bonds at once, and fastens the edges too", () => {
    expect(steps.map(({ kind }) => kind)).toEqual(["deburr", "degrease", "abrade", "coat", "bond", "fasten"]);
    expect(steps.find(({ kind }) => kind === "bond")?.words).toContain("0.5 mm");
    expect(steps.find(({ kind }) => kind === "fasten")?.words).toContain("peeling");
  });

  it("says the hazard at the step where it is", () => {
    const hazards = Object.fromEntries(steps.map(({ kind, hazards: own }) => [kind, own]));
    expect(hazards.degrease).toContain("solvent");
    expect(hazards.abrade).toContain("metal dust");
    expect(hazards.coat).toContain("epoxy");
  });
});
