export { planBounds, planLines, planPath, sharedLine } from "./plan-lines.ts";
export { useStripShapes } from "./use-strip-shapes.ts";
