export type { Affine } from "./affine.ts";
export { type Complaint, wordComplaint } from "./complaint.ts";
export { type Contour, changedContour, pointOnStroke, reversedContour, type Stroke } from "./contour.ts";
export { type FitSettings, type FittedLine, type FittedNode, fitContour } from "./fit-contour.ts";
export { readDecimal } from "./read-decimal.ts";
export { isSvg, readDrawing } from "./read-drawing.ts";
export type { Drawn } from "./read-svg.ts";
export { type RightHalf, rightHalf } from "./right-half.ts";
export { type Separator, separatorOf, splitTable, type TableRow } from "./split-table.ts";
