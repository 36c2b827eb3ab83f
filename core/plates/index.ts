export {
  allowanceOfDeductionMm,
  bendAllowanceMm,
  bendDeductionMm,
  kFactorOfAllowance,
  type MetalBend,
  setBackMm,
} from "./bend-allowance.ts";
export { aircraftAllowance, dinCompensationMm, dinFactor, kFactorOfRightAngle } from "./bend-conventions.ts";
export { foldPlate, type PlateOutcome } from "./fold-plate.ts";
export { polygonOfPlateLoop } from "./plate-areas.ts";
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
