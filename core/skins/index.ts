export { planSkins } from "./plan-skins.ts";
export { pliesOfFace } from "./plies-of-face.ts";
export {
  type LaidPly,
  NO_SKINS,
  type PotCard,
  type SkinFace,
  type SkinFaceName,
  type SkinPlan,
  type SkinSession,
  type SkinTask,
} from "./types.ts";
export { faceWords, potWords, SKIN_CAUTION, skinSteps } from "./word-skins.ts";
