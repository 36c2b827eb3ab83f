export { foamAwayMm3 } from "./edge-finishes.ts";
export { filletArcMm } from "./fillets.ts";
export { layCloth, PEEL_PLY_WIDTH_MM, peelPlyMm } from "./lay-cloth.ts";
export type { MappedLap, MappedPatch, MappedPly, PatchMap } from "./map-types.ts";
export { patchMaps } from "./patch-maps.ts";
export { patchesOfSession } from "./patches-of-session.ts";
export { planSkins } from "./plan-skins.ts";
export { laidPlies, mixedOnKg, onTrayKg } from "./resin-per-area.ts";
export { dissolvedFoams } from "./shop-problems.ts";
export { skinMassKg } from "./skin-mass.ts";
export { potCards, sessionMinutes } from "./skin-sessions.ts";
export {
  type Fillet,
  type FinishedEdges,
  type LaidCloth,
  type LaidClothLength,
  type LaidPatch,
  type LaidPly,
  type LaidZone,
  type LapAtJoint,
  type LapCrossing,
  NO_SKINS,
  type OutsideCorner,
  type PotCard,
  type SkinFace,
  type SkinFaceName,
  type SkinField,
  type SkinPatch,
  type SkinPlan,
  type SkinSession,
  type SkinStep,
  type SkinTask,
} from "./types.ts";
export { cornerWords, edgeWords, FINISH_NAMES, filletWords } from "./word-edges.ts";
export { type LapRow, lapRows, stackedWords } from "./word-laps.ts";
export { mapWords } from "./word-maps.ts";
export {
  faceWords,
  patchSize,
  patchWords,
  potWords,
  SKIN_CAUTION,
  sessionWords,
} from "./word-skins.ts";
export { clothNameOn, zoneRow, zoneWords } from "./word-zones.ts";
export { fieldMinutes } from "./work-minutes.ts";
