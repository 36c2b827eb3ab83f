import { type TemplateWay, templateWayOf } from "../project/index.ts";
import type { Design } from "./design.ts";
import { pageWindow } from "./page-window.ts";
import type { Piece } from "./piece.ts";
import { neededAlone } from "./plan-templates.ts";
import { layOutTemplates } from "./template-layouts.ts";
import { templatePieces } from "./template-pieces.ts";

/** What marking out a part takes in each way. */
export interface TemplateCount {
  /** Of a part, a plate or a rib. */
  readonly partId: string;
  readonly name: string;
  readonly way: TemplateWay;
  /** Whether the builder chose it for this part alone. */
  readonly isOwn: boolean;
  /** Pages if this part is printed by itself; on shared paper the whole takes no more. */
  readonly fullPages: number;
  readonly curvesPages: number;
  readonly fullMinutes: number;
  readonly curvesMinutes: number;
}

/** Minutes to print, trim, tape and check a square metre of pages; of a roll (common practice). */
const MINUTES_PER_M2 = 10;
const MINUTES_PER_M2_ROLL = 3;

/**
 * Pages and taping time of every part, plate and rib that can have a template, whole and by curves and corners alone; none
 * where the paper is a problem. The pieces may be given where they are known.
 */
export function templateCounts(
  design: Design,
  pieces: readonly Piece[] = templatePieces(design),
): readonly TemplateCount[] {
  const window = pageWindow(design.project.paper);
  if (!window.ok) return [];
  const { paperWidthMm, paperHeightMm, marginMm, cutToLength } = window.value;
  const minutesOf = (heightsMm: readonly number[]): number => {
    const areaM2 = heightsMm.reduce((sum, heightMm) => sum + heightMm * paperWidthMm, 0) / 1e6;
    return areaM2 * (cutToLength ? MINUTES_PER_M2_ROLL : MINUTES_PER_M2);
  };
  /** The heights of the pages that a piece takes by itself. */
  const pagesOf = (piece: Piece): readonly number[] =>
    layOutTemplates([piece], window.value).flatMap(({ tiles, windowHeightMm }) =>
      tiles.map(() => (cutToLength ? windowHeightMm + 2 * marginMm : paperHeightMm)),
    );
  return byPart(pieces).map((own) => {
    const [{ partId, name }] = own;
    const [full, curves] = [own.flatMap(pagesOf), own.map(neededAlone).flatMap(pagesOf)];
    return {
      partId,
      name,
      way: templateWayOf(design.project, partId),
      isOwn: (design.project.paper.templateWays ?? []).some((one) => one.partId === partId),
      fullPages: full.length,
      curvesPages: curves.length,
      fullMinutes: minutesOf(full),
      curvesMinutes: minutesOf(curves),
    };
  });
}

/** Pages of a part in the way that it is to be marked out. */
export const pagesInWay = ({ way, fullPages, curvesPages }: TemplateCount): number =>
  way === "full" ? fullPages : way === "curves" ? curvesPages : 0;

type Pieces = readonly [Piece, ...Piece[]];

/** The pieces of each part together, in their order. */
function byPart(pieces: readonly Piece[]): readonly Pieces[] {
  const groups = new Map<string, Pieces>();
  for (const piece of pieces) {
    const known = groups.get(piece.partId);
    groups.set(piece.partId, known === undefined ? [piece] : [...known, piece]);
  }
  return [...groups.values()];
}

/** In words, for screen and paper. */
export const WAY_WORDS: Readonly<Record<TemplateWay, string>> = {
  full: "whole",
  curves: "curves and corners",
  table: "table only",
};
