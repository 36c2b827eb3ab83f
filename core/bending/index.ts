export { bendZones, type SheetBends } from "./bend-zones.ts";
export { arcOf, type BentCurve, chordBetween, turnOf } from "./bent-curve.ts";
export {
  type BentFoam,
  countFor,
  holdDownN,
  holdingMomentPerMm,
  outerStrain,
  washerN,
  weightN,
} from "./holding.ts";
export { layPlanks, longestChordMm, type Plank } from "./planks.ts";
export {
  closingAngleRad,
  kerfOfClosing,
  laySlots,
  type SlotCut,
  type SlotPattern,
  type SlotSettings,
  type SlotSide,
  slotCount,
  slotPitchMm,
} from "./relief-slots.ts";
export {
  type Layer,
  overBendRadiusMm,
  radiusAfterMm,
  springbackShare,
  stiffnessOf,
} from "./springback.ts";
export type {
  BendFace,
  BendVerdict,
  BendZone,
  ZoneBend,
  ZoneLimits,
  ZonePlank,
  ZoneSlots,
} from "./types.ts";
export { type BendGround, slotKerfMm, TEST_SLOTS } from "./ways-to-bend.ts";
