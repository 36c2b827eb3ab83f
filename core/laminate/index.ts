export { type FaceDepths, faceDepths } from "./face-depths.ts";
