import { at, type Problem } from "../foundation/index.ts";
import { edgeMarks } from "../marking/index.ts";
import { templateWayOf } from "../project/index.ts";
import { backId, backLabels, backPiece, needsBack } from "./back-piece.ts";
import { bevelGaugePages, gaugePageCount } from "./bevel-gauge-pages.ts";
import { type Box, boxOf } from "./boxes.ts";
import { curvesAndCorners } from "./curves-and-corners.ts";
import type { Design } from "./design.ts";
import { gaugeBoxes } from "./gauge-marks.ts";
import { type Fonts, type Lettering, readLettering } from "./lettering.ts";
import { type Placing, paper } from "./marks.ts";
import { type PageWindow, pageWindow } from "./page-window.ts";
import type { Piece } from "./piece.ts";
import { type LabelRoom, ribLabels, stripLabels } from "./piece-labels.ts";
import { plateLabels } from "./plate-labels.ts";
import { platePiece } from "./plate-piece.ts";
import { ribGroups, ribPiece } from "./rib-piece.ts";
import { stripPiece } from "./strip-piece.ts";
import { layOutTemplates, type TemplateLayout } from "./template-layouts.ts";
import { mapPageCount, tileMapPages } from "./tile-map.ts";
import { tilePage } from "./tile-page.ts";
import type { DrawingSet, Mark } from "./types.ts";

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

/** The true-size templates as pages: map first, bevel gauges where edges need them, then layout by layout. No pages where the paper is a problem. */
export function drawTemplates(
  design: Design,
  fonts: Fonts,
): { readonly set: DrawingSet; readonly problems: readonly Problem[] } {
  const { plan, problems } = planTemplates(design);
  const { project } = design;
  const set: DrawingSet = {
    title: `${project.title}: templates`,
    issuedOn: project.titleBlock.issuedOn,
    projectId: project.id,
    pages: [],
  };
  if (plan === undefined) return { set, problems };
  const lettering = readLettering(fonts);
  const setting = {
    title: project.title,
    window: plan.window,
    lettering,
    pageCount: plan.pageCount,
    cutting: project.cutting,
    labels: pieceLabels(design, plan, lettering),
  };
  const mapCount = mapPageCount(plan.layouts.length, plan.window);
  const gauges = bevelGaugePages(design.strips, mapCount + 1, setting);
  const firstPages = firstPagesOf(plan.layouts, mapCount + gauges.length + 1);
  const tiles = plan.layouts.flatMap((layout, i) =>
    layout.tiles.map((tile, j) => tilePage(layout, tile, at(firstPages, i) + j, setting)),
  );
  const maps = tileMapPages(plan.layouts, firstPages, setting);
  return { set: { ...set, pages: [...maps, ...gauges, ...tiles] }, problems };
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

function firstPagesOf(layouts: readonly TemplateLayout[], first: number): readonly number[] {
  let page = first;
  return layouts.map((layout) => {
    const start = page;
    page += layout.tiles.length;
    return start;
  });
}

/** Every strip, every plate, and one rib of each outline whose top is not one straight line. */
export function templatePieces(design: Design): readonly Piece[] {
  const strips = design.strips.flatMap((strip) => {
    const part = design.parts.find((candidate) => candidate.id === strip.partId);
    if (part === undefined) return [];
    const front = stripPiece(design, strip, part);
    return needsBack(design, strip, part) ? [front, backPiece(design, strip, part)] : [front];
  });
  const plates = design.plates.flatMap((plate) => plate.parts.map((part) => platePiece(plate, part)));
  return [...strips, ...plates, ...templateRibs(design).map((group) => ribPiece(group))];
}

export const templateRibs = (design: Design) => ribGroups(design).filter((group) => !group.rib.straightTop);

/** The words of every piece in its own frame, clear of seams between pages and of bar and square. */
function pieceLabels(
  design: Design,
  plan: TemplatePlan,
  lettering: Lettering,
): ReadonlyMap<string, readonly Mark[]> {
  const labels = new Map<string, readonly Mark[]>();
  const marks = edgeMarks(design);
  for (const layout of plan.layouts) {
    const busy = busyBoxes(layout, plan.window);
    for (const { piece, placing } of layout.pieces) {
      const room = {
        piece,
        lettering,
        avoid: busy.map((box) => unplaceBox(box, placing)),
        marks: marks.filter(({ stripId }) => stripId === piece.id),
      };
      labels.set(piece.id, labelsOf(design, room));
    }
  }
  return labels;
}

/** The words of one piece in its own frame. */
export function labelsOf(design: Design, room: LabelRoom): readonly Mark[] {
  const { id: pieceId } = room.piece;
  const strip = design.strips.find((one) => one.id === pieceId || backId(one) === pieceId);
  const part = design.parts.find((candidate) => candidate.id === strip?.partId);
  if (strip !== undefined && part !== undefined)
    return (strip.id === pieceId ? stripLabels : backLabels)(design, strip, part, room);
  for (const plate of design.plates) {
    const flat = plate.parts.find(({ id }) => id === room.piece.id);
    if (flat !== undefined) return plateLabels(plate, flat, room);
  }
  const group = templateRibs(design).find((candidate) => candidate.rib.id === room.piece.id);
  return group === undefined ? [] : ribLabels(group, room);
}

/** Where a layout's pages overlap, and what bar and square cover on each. */
function busyBoxes(layout: TemplateLayout, window: PageWindow): readonly Box[] {
  return layout.tiles.flatMap(({ origin }) => {
    const right = origin.x + window.widthMm;
    const top = origin.y + layout.windowHeightMm;
    const lap = window.overlapMm;
    return [
      { left: origin.x, right: origin.x + lap, bottom: origin.y, top },
      { left: right - lap, right, bottom: origin.y, top },
      { left: origin.x, right, bottom: origin.y, top: origin.y + lap },
      { left: origin.x, right, bottom: top - lap, top },
      ...gaugeBoxes(window).map((box) => ({
        left: box.left + origin.x,
        right: box.right + origin.x,
        bottom: box.bottom + origin.y,
        top: box.top + origin.y,
      })),
    ];
  });
}

/** A box of the layout in the frame of a piece that lies there. */
function unplaceBox(box: Box, placing: Placing): Box {
  const corners = [paper(box.left, box.bottom), paper(box.right, box.top)].map((p) => {
    const [x, y] = [p.x - placing.move.x, p.y - placing.move.y];
    return placing.quarterTurned ? paper(y, -x) : paper(x, y);
  });
  return boxOf(corners);
}
