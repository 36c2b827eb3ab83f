export { planSkins } from "./plan-skins.ts";
export { pliesOfFace } from "./plies-of-face.ts";
export type { LaidPly, PotCard, SkinFace, SkinFaceName, SkinPlan, SkinSession } from "./types.ts";
export { faceWords, potWords, SKIN_CAUTION, skinSteps } from "./word-skins.ts";
