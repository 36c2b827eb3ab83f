export { layCloth, peelPlyMm } from "./lay-cloth.ts";
export { planSkins } from "./plan-skins.ts";
export { pliesOfFace } from "./plies-of-face.ts";
export {
  type LaidCloth,
  type LaidClothLength,
  type LaidPatch,
  type LaidPly,
  type LapAtJoint,
  NO_SKINS,
  type PotCard,
  type SkinFace,
  type SkinFaceName,
  type SkinField,
  type SkinPatch,
  type SkinPlan,
  type SkinSession,
  type SkinTask,
} from "./types.ts";
export {
  faceWords,
  lapWords,
  patchesOfSession,
  patchSize,
  patchWords,
  potWords,
  SKIN_CAUTION,
  sessionWords,
  skinSteps,
} from "./word-skins.ts";
