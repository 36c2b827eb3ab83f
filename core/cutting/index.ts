export { HELD_BY_THICKNESSES, isReached } from "./bent-ends.ts";
export { type CutLines, cutLinesOf } from "./cut-lines.ts";
export { type Cutting, cutStrips } from "./cut-strips.ts";
export { type CutAxis, type Division, divideLoops } from "./divide-loops.ts";
export { groupIslands, type Island, isInside } from "./group-islands.ts";
export { allowanceOf, kerfOutsideMm } from "./kerf-outside.ts";
export { closerSpareMm, leaveSpare, type SparedEdge } from "./leave-spare.ts";
export {
  boundsOfLoops,
  boundsOfPoints,
  type FlatBounds,
  lengthOfEdgeMm,
  signedAreaMm2,
} from "./loop-measures.ts";
export { offsetEdges, offsetLoops } from "./offset-loops.ts";
export type { RunPast } from "./past-end.ts";
export { type RunPastGround, runPast } from "./run-past.ts";
export type { Seam, Strip, StripSlot } from "./types.ts";
export { foamMmOf } from "./usable-stock.ts";
