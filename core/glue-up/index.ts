export { glueMassKg, slotFillingKg } from "./glue-mass.ts";
export { type GlueTimes, glueTimes } from "./glue-times.ts";
export { glueHow, lineWords, openTimeWords, waitWords } from "./glue-words.ts";
export { type GlueUpSources, planGlueUp } from "./plan-glue-up.ts";
export type { GlueRound, GlueStep, StepKind, StepLine, StepWait } from "./types.ts";
