import { at, type Problem } from "../foundation/index.ts";
import { backId, backLabels } from "./back-piece.ts";
import { bevelGaugePages } from "./bevel-gauge-pages.ts";
import { type Box, boxOf } from "./boxes.ts";
import type { Design } from "./design.ts";
import { gaugeBoxes } from "./gauge-marks.ts";
import { type Fonts, readLettering } from "./lettering.ts";
import { type Placing, paper } from "./marks.ts";
import type { PageWindow } from "./page-window.ts";
import { type PaperWork, paperWork } from "./paper-work.ts";
import type { LabelRoom } from "./place-words.ts";
import type { TemplatePlan } from "./plan-templates.ts";
import { plateLabels } from "./plate-labels.ts";
import { ribLabels } from "./rib-labels.ts";
import { stripLabels } from "./strip-labels.ts";
import type { TemplateLayout } from "./template-layouts.ts";
import { templateRibs } from "./template-pieces.ts";
import { mapPageCount, tileMapPages } from "./tile-map.ts";
import { tilePage } from "./tile-page.ts";
import type { DrawingSet, Mark } from "./types.ts";

/** The true-size templates as pages: map first, bevel gauges where edges need them, then layout by layout. No pages where the paper is a problem. */
export function drawTemplates(
  design: Design,
  fonts: Fonts,
  work: PaperWork = paperWork(design),
): { readonly set: DrawingSet; readonly problems: readonly Problem[] } {
  const { plan, problems } = work.templates;
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
    labels: pieceLabels(design, plan, { marks: work.marks, lettering }),
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

function firstPagesOf(layouts: readonly TemplateLayout[], first: number): readonly number[] {
  let page = first;
  return layouts.map((layout) => {
    const start = page;
    page += layout.tiles.length;
    return start;
  });
}

/** The words of every piece in its own frame, clear of seams between pages and of bar and square. */
function pieceLabels(
  design: Design,
  plan: TemplatePlan,
  { marks, lettering }: Pick<LabelRoom, "marks" | "lettering">,
): ReadonlyMap<string, readonly Mark[]> {
  const labels = new Map<string, readonly Mark[]>();
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
