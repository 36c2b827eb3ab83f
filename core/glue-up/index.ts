export { glueMassKg, slotFillingKg } from "./glue-mass.ts";
export { type GlueUpSources, planGlueUp } from "./plan-glue-up.ts";
export type { GlueStep } from "./types.ts";
