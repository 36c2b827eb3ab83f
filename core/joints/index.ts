export { cutOfFold, type FoldCut, mitreBevels } from "./cut-of-fold.ts";
export { findJoints } from "./find-joints.ts";
export type { EdgeSetBack, Joint, JointCut, JointKind, JointOffer, JointStation, SetBack } from "./types.ts";
export { wordBevel } from "./word-bevel.ts";
