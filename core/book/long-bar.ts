import { at, formatNumber } from "../foundation/index.ts";
import type { Box } from "./boxes.ts";
import { clipLine } from "./clip.ts";
import { type LineMark, lineMark, paper, type TextMark, textMark } from "./marks.ts";
import { GAUGE_INSET_MM, type PageWindow } from "./page-window.ts";
import type { TemplateLayout, Tile } from "./template-layouts.ts";
import type { PaperPoint } from "./types.ts";

/** A bar over several pages that are taped to each other, in the frame of the layout. */
export interface LongBar {
  readonly lengthMm: number;
  readonly from: PaperPoint;
  readonly to: PaperPoint;
  /** The pages that it begins and ends on. */
  readonly fromTile: string;
  readonly toTile: string;
}

/** The bar is whole hundreds long, and no shorter than it takes to see an error of taping, mm. */
const STEP_MM = 100;
const LEAST_MM = 300;
/** From the edge of the pages: along the edge of a layout nothing else lies there, its pieces begin 7 mm from it. */
const ASIDE_MM = 5.6;

/**
 * The longest bar that lies on pages without a gap, along their lower edge or their left one: on it the errors of all
 * seams between add up. Of rows or columns alike the lowest or the leftmost. None where no two pages are beside each other.
 */
export function longBar(layout: TemplateLayout, window: PageWindow): LongBar | undefined {
  const inset = window.overlapMm + GAUGE_INSET_MM;
  const level = longestRun(layout.tiles, "row", "column");
  const upright = longestRun(layout.tiles, "column", "row");
  const levelMm = lengthOf(
    level.map(({ origin }) => origin.x),
    window.widthMm,
    inset,
  );
  const uprightMm = lengthOf(
    upright.map(({ origin }) => origin.y),
    layout.windowHeightMm,
    inset,
  );
  if (Math.max(levelMm, uprightMm) < LEAST_MM) return undefined;
  const isLevel = levelMm >= uprightMm;
  const [first, last] = isLevel ? [at(level, 0), at(level, -1)] : [at(upright, -1), at(upright, 0)];
  const lengthMm = Math.max(levelMm, uprightMm);
  const from = isLevel
    ? paper(first.origin.x + inset, first.origin.y + ASIDE_MM)
    : paper(first.origin.x + ASIDE_MM, first.origin.y + inset);
  const to = isLevel ? paper(from.x + lengthMm, from.y) : paper(from.x, from.y + lengthMm);
  return { lengthMm, from, to, fromTile: first.name, toTile: last.name };
}

/** The most pages beside each other in one row, or above each other in one column, in the order of their numbers. */
function longestRun(tiles: readonly Tile[], same: "row" | "column", next: "row" | "column"): readonly Tile[] {
  // Rows are lettered from above, columns numbered from the left.
  const outward = same === "row" ? -1 : 1;
  const inOrder = [...tiles].sort((a, b) => outward * (a[same] - b[same]) || a[next] - b[next]);
  let [best, run]: [readonly Tile[], readonly Tile[]] = [[], []];
  for (const tile of inOrder) {
    const before = run.at(-1);
    const goesOn = before !== undefined && before[same] === tile[same] && before[next] + 1 === tile[next];
    run = goesOn ? [...run, tile] : [tile];
    if (run.length > best.length) best = run;
  }
  return best.length > 1 ? best : [];
}

/** How long a bar fits windows of a size that begin at these places, clear of both ends. */
function lengthOf(starts: readonly number[], windowMm: number, insetMm: number): number {
  if (starts.length === 0) return 0;
  const spanMm = Math.max(...starts) - Math.min(...starts) + windowMm;
  return Math.floor((spanMm - 2 * insetMm) / STEP_MM) * STEP_MM;
}

/** Half a tick at every hundred, and at the ends, mm. */
const HALF_TICK_MM = 1;
const HALF_END_MM = 2;

/** What of the bar lies on a page: the line, a tick at every hundred, longer ones at its ends. */
export function longBarMarks({ lengthMm, from, to }: LongBar, shown: Box): readonly LineMark[] {
  const [dx, dy] = [(to.x - from.x) / lengthMm, (to.y - from.y) / lengthMm];
  const count = Math.round(lengthMm / STEP_MM);
  const ticks = Array.from({ length: count + 1 }, (_, i) => {
    const half = i === 0 || i === count ? HALF_END_MM : HALF_TICK_MM;
    const [x, y] = [from.x + dx * i * STEP_MM, from.y + dy * i * STEP_MM];
    return [paper(x - dy * half, y - dx * half), paper(x + dy * half, y + dx * half)];
  });
  return [[from, to], ...ticks].flatMap((points) => clipLine(lineMark(points, "register", "gauge"), shown));
}

/** Along the bar from its end, where its words may stand, mm. */
const WORDS_MM = [3, 12, 25, 45, 60, 75, 110, 130];

/** On the outer side of the bar, away from the pieces, on the pages of its ends: how long it is and over which pages; the places where the words may stand. */
export function longBarWords(bar: LongBar, tile: Tile): readonly TextMark[] {
  const { lengthMm, from, to, fromTile, toTile } = bar;
  if (tile.name !== fromTile && tile.name !== toTile) return [];
  const isFirst = tile.name === fromTile;
  const isLevel = from.y === to.y;
  const end = isFirst ? from : to;
  return WORDS_MM.map((alongMm) => {
    const by = isFirst ? alongMm : -alongMm;
    return textMark(
      isLevel ? paper(end.x + by, end.y - 3.2) : paper(end.x - 0.7, end.y + by),
      `long bar ${formatNumber(lengthMm, 0)} mm, ${fromTile} to ${toTile}`,
      { anchor: isFirst ? "start" : "end", turnRad: isLevel ? 0 : Math.PI / 2, layer: "gauge" },
    );
  });
}
