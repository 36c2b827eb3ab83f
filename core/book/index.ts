export { drawBook } from "./book.ts";
export { type CalendarEvent, calendarEvents, type WallTime } from "./calendar-events.ts";
export type { DataTable } from "./data-table.ts";
export { dataTables } from "./data-tables.ts";
export type { Design } from "./design.ts";
export { type Fonts, type Lettering, readLettering } from "./lettering.ts";
export type { PageWindow } from "./page-window.ts";
export { type PaperWork, paperWork } from "./paper-work.ts";
export { drawPiecePages } from "./piece-pages.ts";
export { type SpaceShape, stripShapes } from "./plan-shapes.ts";
export { type PlannedTemplates, planTemplates, type TemplatePlan } from "./plan-templates.ts";
export {
  type Report,
  type ReportGlueStep,
  type ReportPart,
  type ReportProblem,
  type ReportStrip,
  reportOf,
} from "./report.ts";
export type { ReportBend, ReportPlate, ReportPlateEdge, ReportWing } from "./report-plates.ts";
export type { PlacedPiece, TemplateLayout, Tile } from "./template-layouts.ts";
export { pagesInWay, type TemplateCount, templateCounts } from "./template-ways.ts";
export { drawTemplates } from "./templates.ts";
export type { DrawingPage, DrawingSet, LineStyle, Mark, PaperPoint, TextFace } from "./types.ts";
