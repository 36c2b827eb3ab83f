export { cutOfFold, type FoldCut, mitreBevels } from "./cut-of-fold.ts";
export { findJoints } from "./find-joints.ts";
export type { Joint, JointCut, JointKind, SetBack } from "./types.ts";
export { wordBevel } from "./word-bevel.ts";
