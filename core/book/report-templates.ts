import type { Design } from "./design.ts";
import { type PaperWork, paperWork } from "./paper-work.ts";
import { type TemplateCount, templateCounts } from "./template-ways.ts";

/** The templates in the report: all pages, map and gauges among them, and what every part takes in each way. */
export interface ReportTemplates {
  readonly pageCount: number;
  readonly parts: readonly TemplateCount[];
}

/** Counts the templates of a design. */
export function reportTemplates(design: Design, work: PaperWork = paperWork(design)): ReportTemplates {
  return {
    pageCount: work.templates.plan?.pageCount ?? 0,
    parts: templateCounts(design, work.pieces),
  };
}
