export {
  allowanceOfDeductionMm,
  bendAllowanceMm,
  bendDeductionMm,
  kFactorOfAllowance,
  type MetalBend,
  setBackMm,
} from "./bend-allowance.ts";
export { aircraftAllowance, dinCompensationMm, dinFactor, kFactorOfRightAngle } from "./bend-conventions.ts";
export { type BondHazard, type BondStep, bondPreparation } from "./bond-preparation.ts";
export { foldPlate, type PlateOutcome } from "./fold-plate.ts";
export { foldPlates, wingFreeEdge } from "./fold-plates.ts";
export { polygonOfPlateLoop } from "./plate-areas.ts";
export {
  type PlateUnderFoam,
  plateUnderFoam,
  RAMP_RATIO,
  type StepMeasure,
  type StepPlace,
} from "./plate-under-foam.ts";
export type {
  BendFigures,
  BendLine,
  FoldedPlate,
  FoldedWing,
  FoldingReason,
  FoldingStep,
  MetalLine,
  PlateEdge,
  PlateEdgeRole,
  PlateHand,
  PlateLoop,
  PlatePart,
  WingEdge,
} from "./types.ts";
