export { freeAngles } from "./free-angles.ts";
export { bestLayout, isPackingDone, type Packing, startPacking, stepPacking } from "./packing.ts";
export { type PackingRun, packWithin, type RunLimit, runPacking } from "./run-packing.ts";
export type { StepBudget } from "./search.ts";
export type {
  LaidSheet,
  Layout,
  PackingLoop,
  PackingPiece,
  PackingPoint,
  PackingProblem,
  PackingStock,
  Placement,
  SheetSize,
} from "./types.ts";
export { type LayoutFault, verifyLayout } from "./verify-layout.ts";
