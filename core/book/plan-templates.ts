import type { Problem } from "../foundation/index.ts";
import { templateWayOf } from "../project/index.ts";
import { gaugePageCount } from "./bevel-gauge-pages.ts";
import { curvesAndCorners } from "./curves-and-corners.ts";
import type { Design } from "./design.ts";
import { type PageWindow, pageWindow } from "./page-window.ts";
import type { Piece } from "./piece.ts";
import { layOutTemplates, type TemplateLayout } from "./template-layouts.ts";
import { templatePieces } from "./template-pieces.ts";
import { mapPageCount } from "./tile-map.ts";

/** What would be printed: layouts, pages and the window of a page; nothing is drawn yet. */
export interface TemplatePlan {
  readonly window: PageWindow;
  readonly layouts: readonly TemplateLayout[];
  readonly pageCount: number;
}

/** The plan of the templates, or none with the problems of the paper that prevent it. */
export interface PlannedTemplates {
  readonly plan?: TemplatePlan;
  readonly problems: readonly Problem[];
}

/**
 * Counts and lays out the true-size pages of every strip, every plate and every rib that needs a template. Problems:
 * `page-too-small`, `number-out-of-range` for paper settings. The pieces may be given where they are known.
 */
export function planTemplates(design: Design, all = templatePieces(design)): PlannedTemplates {
  const window = pageWindow(design.project.paper);
  if (!window.ok) return { problems: window.problems };
  const pieces = all.flatMap((piece) => inItsWay(design, piece));
  if (pieces.length === 0) return { problems: [] };
  const layouts = layOutTemplates(pieces, window.value);
  const tileCount = layouts.reduce((sum, layout) => sum + layout.tiles.length, 0);
  const pageCount =
    mapPageCount(layouts.length, window.value) + gaugePageCount(design.strips, window.value) + tileCount;
  return { plan: { window: window.value, layouts, pageCount }, problems: [] };
}

/** A piece as its way asks: whole, with what of it is needed, or not at all. */
export function inItsWay({ project }: Design, piece: Piece): readonly Piece[] {
  switch (templateWayOf(project, piece.partId)) {
    case "full":
      return [piece];
    case "curves":
      return [neededAlone(piece)];
    case "table":
      return [];
  }
}

/** A piece of which the curves and corners alone are needed at true size. */
export const neededAlone = (piece: Piece): Piece => ({
  ...piece,
  needed: piece.lines.filter(({ style }) => style === "cut").flatMap(curvesAndCorners),
});
