import type { Plate, Project } from "../project/index.ts";

/** How the step between foam over the plate and foam over the skin beside it is taken up. */
export type StepMeasure =
  | { readonly kind: "none" }
  /** The foam is cut away on its lower face, so that one sheet runs on straight. */
  | { readonly kind: "rebate"; readonly where: StepPlace; readonly depthMm: number }
  /** The foam is packed up from what lies under it. */
  | { readonly kind: "shim"; readonly where: StepPlace; readonly thicknessMm: number }
  /** The foam is filled up under its lower face with a wedge that runs out to nothing. */
  | {
      readonly kind: "ramp";
      readonly where: StepPlace;
      readonly heightMm: number;
      readonly lengthMm: number;
    };

export type StepPlace = "over the plate" | "beside the plate";

/** What a plate on the air side means for the foam over it. */
export interface PlateUnderFoam {
  /** From the air side to the foam over the plate: metal and bond line. There is no lower skin there. */
  readonly foamOverPlateMm: number;
  /** From the air side to the foam beside the plate: the nominal lower skin. */
  readonly foamBesideMm: number;
  /** How much higher the foam stands over the plate than beside it; negative where the skin is the thicker. */
  readonly stepMm: number;
  readonly measure: StepMeasure;
}

/** A filled ramp is so many times as long as it is high (common practice: what loads and air run over without a knee). */
export const RAMP_RATIO = 20;

/** A lower step disappears in glue and wet laminate. */
const NO_STEP_MM = 0.05;

/**
 * A plate on the air side takes the place of the lower skin: over it the foam stands metal plus bond line above the air
 * side, beside it the nominal skin. Where the plate is the thicker of the two, a rebate is cut into the foam over the
 * plate, or a shim or ramp goes under the foam beside it; where the skin is, the other way about.
 */
export function plateUnderFoam(project: Project, plate: Plate): PlateUnderFoam {
  const foamOverPlateMm = plate.thicknessMm + plate.bond.lineMm;
  const foamBesideMm = project.skins.lowerMm;
  const stepMm = foamOverPlateMm - foamBesideMm;
  return { foamOverPlateMm, foamBesideMm, stepMm, measure: measureOf(plate.bond.step, stepMm) };
}

function measureOf(step: Plate["bond"]["step"], stepMm: number): StepMeasure {
  const heightMm = Math.abs(stepMm);
  if (heightMm < NO_STEP_MM) return { kind: "none" };
  const cutWhere: StepPlace = stepMm > 0 ? "over the plate" : "beside the plate";
  const filledWhere: StepPlace = stepMm > 0 ? "beside the plate" : "over the plate";
  switch (step) {
    case "rebate":
      return { kind: "rebate", where: cutWhere, depthMm: heightMm };
    case "shim":
      return { kind: "shim", where: filledWhere, thicknessMm: heightMm };
    case "ramp":
      return { kind: "ramp", where: filledWhere, heightMm, lengthMm: RAMP_RATIO * heightMm };
  }
}
