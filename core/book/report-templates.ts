import type { Design } from "./design.ts";
import { type LongBar, longBar } from "./long-bar.ts";
import type { PaperWork } from "./paper-work.ts";
import type { TemplatePlan } from "./plan-templates.ts";
import { type TemplateCount, templateCounts } from "./template-ways.ts";

/** The templates in the report: all pages, map and gauges among them, and what every part takes in each way. */
export interface ReportTemplates {
  readonly pageCount: number;
  readonly parts: readonly TemplateCount[];
  /** The bars over several taped pages, of the layouts that have one. */
  readonly longBars: readonly ReportLongBar[];
}

/** A bar over several taped pages: in which layout, how long, and on which pages it begins and ends. */
export type ReportLongBar = { readonly layout: number } & Pick<LongBar, "lengthMm" | "fromTile" | "toTile">;

/** Counts the templates of a design. */
export function reportTemplates(design: Design, work: PaperWork): ReportTemplates {
  return {
    pageCount: work.templates.plan?.pageCount ?? 0,
    parts: templateCounts(design, work.pieces),
    longBars: work.templates.plan === undefined ? [] : longBarsOf(work.templates.plan),
  };
}

const longBarsOf = ({ layouts, window }: TemplatePlan): readonly ReportLongBar[] =>
  layouts.flatMap((layout) => {
    const bar = longBar(layout, window);
    if (bar === undefined) return [];
    const { lengthMm, fromTile, toTile } = bar;
    return [{ layout: layout.number, lengthMm, fromTile, toTile }];
  });
