export { glueMassKg } from "./glue-mass.ts";
export type { GlueStep } from "./types.ts";
