import { at } from "../foundation/index.ts";
import { type Block, besideBlock, type Column, heightOfAll, stackBlock, tableBlocks } from "./blocks.ts";
import { heightOf } from "./boxes.ts";
import { narrowed, widthOfColumns } from "./column-widths.ts";
import type { Lettering } from "./lettering.ts";
import { CONTENT, CONTENT_WIDTH_MM } from "./page-frame.ts";

/** Between two columns of one table, mm. */
const GUTTER_MM = 6;
/** Fewer rows than this are not halved. */
const LEAST_ROWS = 4;

const WHOLE_PAGE = { roomMm: heightOf(CONTENT), freshMm: heightOf(CONTENT) };

interface Place {
  /** What is left of the page that the table begins on, and what a fresh page would leave under the words before it, mm. */
  readonly roomMm: number;
  readonly freshMm: number;
  readonly lettering: Lettering;
}

/**
 * The rows of a long table in one column of a page where they fit one, else in two beside each other, read down the left
 * and then down the right, with the columns as narrow as their words; one column where two find no room. A table that fits
 * a page is not divided.
 */
export function besideColumns(
  columns: readonly Column[],
  rows: readonly (readonly string[])[],
  { roomMm, freshMm, lettering }: Place,
): readonly Block[] {
  const single = tableBlocks(columns, rows, lettering);
  const heightMm = heightOfAll(single);
  const narrow = narrowed(columns, rows, lettering);
  if (heightMm <= roomMm || !standBeside(narrow)) return single;
  const fresh = rowsThatFit(narrow, rows, freshMm, lettering);
  const here = rowsThatFit(narrow, rows, roomMm, lettering);
  const isOnOnePage = 2 * fresh >= rows.length;
  const perColumn = isOnOnePage || here < LEAST_ROWS ? fresh : here;
  const shown = rows.slice(0, 2 * perColumn);
  const pair = besideTable(narrow, shown, lettering);
  const rest = rows.slice(shown.length);
  return rest.length === 0 ? [pair] : [pair, ...besideColumns(columns, rest, { ...WHOLE_PAGE, lettering })];
}

/** So many rows fit a column of this height under the table's heading, whichever they are. */
function rowsThatFit(
  columns: readonly Column[],
  rows: readonly (readonly string[])[],
  roomMm: number,
  lettering: Lettering,
): number {
  const heights = tableBlocks(columns, rows, lettering).map(({ heightMm }) => heightMm);
  const [headingMm, lastMm] = [at(heights, 0), at(heights, -1)];
  const tallestMm = Math.max(...heights.slice(1, -1));
  return 1 + Math.max(0, Math.floor((roomMm - headingMm - lastMm) / tallestMm));
}

/**
 * A short table as one block, its rows halved into two columns where these find room beside each other. One that is longer than
 * a fresh page leaves (`freshMm`, under the words before it) goes on over pages.
 */
export function halvedTable(
  columns: readonly Column[],
  rows: readonly (readonly string[])[],
  { freshMm, lettering }: Omit<Place, "roomMm">,
): readonly Block[] {
  const narrow = narrowed(columns, rows, lettering);
  const isHalved = rows.length >= LEAST_ROWS && standBeside(narrow);
  const whole = isHalved
    ? besideTable(narrow, rows, lettering)
    : stackBlock(tableBlocks(columns, rows, lettering));
  if (whole.heightMm <= freshMm) return [whole];
  return besideColumns(columns, rows, { roomMm: freshMm, freshMm, lettering });
}

function besideTable(
  columns: readonly Column[],
  rows: readonly (readonly string[])[],
  lettering: Lettering,
): Block {
  const half = Math.ceil(rows.length / 2);
  const column = (part: readonly (readonly string[])[]) => stackBlock(tableBlocks(columns, part, lettering));
  const offsetMm = (CONTENT_WIDTH_MM + GUTTER_MM) / 2;
  return besideBlock(column(rows.slice(0, half)), column(rows.slice(half)), offsetMm);
}

const standBeside = (columns: readonly Column[]): boolean =>
  2 * widthOfColumns(columns) + GUTTER_MM <= CONTENT_WIDTH_MM;
