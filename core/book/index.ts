export type { DrawingPage, DrawingSet, LineStyle, Mark, PaperPoint, TextFace } from "./types.ts";
