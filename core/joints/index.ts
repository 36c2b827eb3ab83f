export type { Joint, JointCut } from "./types.ts";
