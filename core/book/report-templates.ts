import type { Design } from "./design.ts";
import { type TemplateCount, templateCounts } from "./template-ways.ts";
import { planTemplates, templatePieces } from "./templates.ts";

/** The templates in the report: all pages, map and gauges among them, and what every part takes in each way. */
export interface ReportTemplates {
  readonly pageCount: number;
  readonly parts: readonly TemplateCount[];
}

/** Counts the templates of a design. */
export function reportTemplates(design: Design): ReportTemplates {
  const pieces = templatePieces(design);
  return {
    pageCount: planTemplates(design, pieces).plan?.pageCount ?? 0,
    parts: templateCounts(design, pieces),
  };
}
