export { drawBook } from "./book.ts";
export type { Design } from "./design.ts";
export { type Fonts, type Lettering, readLettering } from "./lettering.ts";
export type { PageWindow } from "./page-window.ts";
export type { PlacedPiece, TemplateLayout, Tile } from "./template-layouts.ts";
export { drawTemplates, type PlannedTemplates, planTemplates, type TemplatePlan } from "./templates.ts";
export type { DrawingPage, DrawingSet, LineStyle, Mark, PaperPoint, TextFace } from "./types.ts";
