export { type BevelledEdge, type BevelledLoop, bevelAlong, hasBevels } from "./bevelled-edges.ts";
export { type EdgeMark, edgeMarks } from "./edge-marks.ts";
export { type FittedEdge, fittedEdges, isFitted } from "./fitted-edges.ts";
export { faceTable, markingTables } from "./marking-tables.ts";
export { backFace, faceShiftMm, type ShownFace, shownFace } from "./shown-face.ts";
export type { MarkingRow, MarkingTable, RowReason } from "./types.ts";
