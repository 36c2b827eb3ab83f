export type { GlueStep } from "./types.ts";
