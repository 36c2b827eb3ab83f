import type { Project } from "../project/index.ts";

/** What of a project a jig follows from, besides the sheets. */
export const JIG_GROUND = ["symmetry", "skins", "materials", "marking", "cutting", "jig"] as const;
export type JigGround = Pick<Project, (typeof JIG_GROUND)[number]>;
