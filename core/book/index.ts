export { type Fonts, type Lettering, readLettering } from "./lettering.ts";
export { drawTemplates, type PlannedTemplates, planTemplates, type TemplatePlan } from "./templates.ts";
export type { PlacedPiece, TemplateLayout, Tile } from "./template-layouts.ts";
export type { PageWindow } from "./page-window.ts";
export type { DrawingPage, DrawingSet, LineStyle, Mark, PaperPoint, TextFace } from "./types.ts";
