export { planBounds, planLines, planPath } from "./plan-lines.ts";
export { useStripShapes } from "./use-strip-shapes.ts";
