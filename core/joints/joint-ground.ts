import type { Project, ResolvedLines } from "../project/index.ts";

/** What of a project the joints of its lying sheets follow from, besides those sheets. */
export const JOINT_GROUND = ["joints", "materials", "glue"] as const;
export type JointGround = Pick<Project, (typeof JOINT_GROUND)[number] | "items">;

/** What of the drawn lines they follow from. */
export const JOINT_LINES = ["follows", "transitions"] as const;
export type JointLines = Pick<ResolvedLines, (typeof JOINT_LINES)[number]>;
