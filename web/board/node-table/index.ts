export { cellMarks } from "./cell-marks.ts";
export { SheetOfNodes } from "./SheetOfNodes.tsx";
