import { assert, at } from "../foundation/index.ts";
import type { Box } from "./boxes.ts";
import type { Lettering } from "./lettering.ts";
import { lineMark, paper, type TextLook, textMark } from "./marks.ts";
import type { Mark, PaperPoint, TextFace } from "./types.ts";

/** A piece of a page that keeps together: its height, and its marks once its upper left corner is known. */
export interface Block {
  readonly heightMm: number;
  readonly draw: (corner: PaperPoint) => readonly Mark[];
  /** Set again at the top of a page where this block is the first: the heading of a long table. */
  readonly heading?: Block;
  /** The block is not left alone at the foot of a page. */
  readonly keepsWithNext?: true;
}

/** The blocks from above, on as many pages of the same area as they need; each page's marks. */
export function flowBlocks(blocks: readonly Block[], area: Box): readonly (readonly Mark[])[] {
  const pages: (readonly Mark[])[] = [];
  let marks: Mark[] = [];
  let top = area.top;
  const place = (block: Block) => {
    marks.push(...block.draw(paper(area.left, top)));
    top -= block.heightMm;
  };
  blocks.forEach((block, i) => {
    if (top < area.top && top - keptHeight(blocks, i) < area.bottom) {
      pages.push(marks);
      marks = [];
      top = area.top;
      if (block.heading !== undefined) place(block.heading);
    }
    place(block);
  });
  return [...pages, marks];
}

/** The height that must fit from block `i` on: itself and whatever it keeps with. */
function keptHeight(blocks: readonly Block[], i: number): number {
  let height = 0;
  for (let k = i; k < blocks.length; k++) {
    const block = at(blocks, k);
    height += block.heightMm;
    if (block.keepsWithNext !== true) break;
  }
  return height;
}

/** How high blocks stand on top of each other, mm. */
export const heightOfAll = (blocks: readonly Block[]): number =>
  blocks.reduce((sum, { heightMm }) => sum + heightMm, 0);

/** Free space. */
export const gapBlock = (heightMm: number): Block => ({ heightMm, draw: () => [] });

/** A heading over a table or a picture. */
export const headingBlock = (text: string): Block => ({
  heightMm: 8,
  draw: (corner) => [textMark(paper(corner.x, corner.y - 5.5), text, { heightMm: 3.5, face: "bold" })],
  keepsWithNext: true,
});

/** Running text broken into lines of a width. */
export function paragraphBlock(
  text: string,
  widthMm: number,
  lettering: Lettering,
  look: TextLook = {},
): Block {
  const heightMm = look.heightMm ?? 2.5;
  const lines = breakLines(text, widthMm, lettering, { face: look.face ?? "sans", heightMm });
  const stepMm = heightMm * 1.7;
  return {
    heightMm: lines.length * stepMm + heightMm * 0.4,
    draw: (corner) =>
      lines.map((line, i) => textMark(paper(corner.x, corner.y - heightMm - i * stepMm), line, look)),
  };
}

/** The text in lines no wider than asked, no figure without its unit; a word that is wider alone is divided. */
export function breakLines(
  text: string,
  widthMm: number,
  lettering: Lettering,
  look: { readonly face: TextFace; readonly heightMm: number },
): readonly string[] {
  const fits = (line: string) => lettering.widthMm(line, look.face, look.heightMm) <= widthMm;
  const lines: string[] = [];
  let line = "";
  for (const word of unbroken(text, fits)) {
    const longer = line === "" ? word : `${line} ${word}`;
    if (fits(longer)) {
      line = longer;
      continue;
    }
    if (line !== "") lines.push(line);
    line = word;
    while (!fits(line) && line.length > 1) {
      let kept = line.length - 1;
      while (kept > 1 && !fits(line.slice(0, kept))) kept--;
      lines.push(line.slice(0, kept));
      line = line.slice(kept);
    }
  }
  return line === "" ? lines : [...lines, line];
}

/** What stays together on a line: words, and a figure with the unit after it. */
function unbroken(text: string, fits: (words: string) => boolean): readonly string[] {
  const kept: string[] = [];
  for (const word of text.split(" ").filter((one) => one !== "")) {
    const before = kept.at(-1);
    const isUnit = before !== undefined && UNIT.test(word) && FIGURE_END.test(before);
    if (isUnit && fits(`${before} ${word}`)) kept[kept.length - 1] = `${before} ${word}`;
    else kept.push(word);
  }
  return kept;
}

const FIGURE_END = /\d$/;
/** A unit as our words write it, with what may stand after it. */
const UNIT = /^(?:mm|m|m²|µm|g|kg|g\/m²|kg\/m²|N|MPa|GPa|min|h|days?|%|°C)[.,;:)]*$/;

/** A column of a table: its heading, its width, and how its cells stand. */
export interface Column {
  readonly title: string;
  readonly widthMm: number;
  readonly face?: TextFace;
  readonly anchor?: "start" | "end";
  /** Cells that are left blank are written in by hand: the column is not made narrower. */
  readonly isWrittenIn?: true;
}

const ROW_PAD_MM = 1.6;
const CELL_TEXT_MM = 2.5;
const LINE_STEP_MM = 4.2;

/** What an A4 sheet has room for between the edges of its frame (`CONTENT_WIDTH_MM`), mm. */
const WIDEST_TABLE_MM = 174;

/** Under the last line of a table, so that words that follow do not touch it, mm. */
const BELOW_TABLE_MM = 1.2;

/** Of a table that goes on over a page, so many rows stand on either side of the break. */
const LEAST_ROWS = 2;

/**
 * A table as one block a row, with its heading set again on every page; cells break into lines. Where a page may hold
 * several tables alike, `about` says which one goes on there.
 */
export function tableBlocks(
  columns: readonly Column[],
  rows: readonly (readonly string[])[],
  lettering: Lettering,
  about = "",
): readonly Block[] {
  const widthMm = columns.reduce((sum, column) => sum + column.widthMm, 0);
  assert(widthMm <= WIDEST_TABLE_MM, `a table of ${widthMm} mm does not fit a sheet`);
  const titles = columns.map((column) => column.title);
  const plain = columns.map(({ face: _face, ...column }) => ({ ...column, face: "bold" as const }));
  const heading: Block = { ...rowBlock(plain, titles, lettering, "thick"), keepsWithNext: true };
  const again =
    about === ""
      ? heading
      : stackBlock([paragraphBlock(`${about}, continued`, widthMm, lettering, { face: "bold" }), heading]);
  return [
    heading,
    ...rows.map((row, i): Block => {
      const isTied = i < LEAST_ROWS - 1 || (i >= rows.length - LEAST_ROWS && i < rows.length - 1);
      const drawn = rowBlock(columns, row, lettering, "thin");
      const belowMm = i === rows.length - 1 ? BELOW_TABLE_MM : 0;
      const block = { ...drawn, heightMm: drawn.heightMm + belowMm, heading: again };
      return isTied ? { ...block, keepsWithNext: true } : block;
    }),
  ];
}

function rowBlock(
  columns: readonly Column[],
  cells: readonly string[],
  lettering: Lettering,
  under: "thick" | "thin",
): Block {
  const broken = columns.map((column, i) =>
    breakLines(cells[i] ?? "", column.widthMm - 2 * ROW_PAD_MM, lettering, {
      face: column.face ?? "sans",
      heightMm: CELL_TEXT_MM,
    }),
  );
  const lineCount = Math.max(1, ...broken.map((lines) => lines.length));
  const heightMm = lineCount * LINE_STEP_MM + 1;
  const draw = (corner: PaperPoint): readonly Mark[] => {
    const marks: Mark[] = [];
    let left = corner.x;
    columns.forEach((column, i) => {
      const atEnd = column.anchor === "end";
      const x = atEnd ? left + column.widthMm - ROW_PAD_MM : left + ROW_PAD_MM;
      at(broken, i).forEach((line, k) => {
        marks.push(
          textMark(paper(x, corner.y - 3.6 - k * LINE_STEP_MM), line, {
            heightMm: CELL_TEXT_MM,
            face: column.face ?? "sans",
            anchor: column.anchor ?? "start",
          }),
        );
      });
      left += column.widthMm;
    });
    const y = corner.y - heightMm;
    marks.push(lineMark([paper(corner.x, y), paper(left, y)], under === "thick" ? "outline" : "station"));
    return marks;
  };
  return { heightMm, draw };
}

/** What sums of widths may be off by, mm: far less than is seen. */
const ROUNDING_MM = 0.1;

/** How narrow a column may be without breaking a cell, or a word of its title, mm. */
export function leastWidthMm(column: Column, cells: readonly string[], lettering: Lettering): number {
  const cellMm = (words: string) => lettering.widthMm(words, column.face ?? "sans", CELL_TEXT_MM);
  const titleMm = (words: string) => lettering.widthMm(words, "bold", CELL_TEXT_MM);
  const widestMm = Math.max(...cells.map(cellMm), ...column.title.split(" ").map(titleMm));
  return widestMm + 2 * ROW_PAD_MM + ROUNDING_MM;
}

/** The blocks on one page where they fit one of this height, else as they are. */
export function togetherBlocks(blocks: readonly Block[], pageMm: number): readonly Block[] {
  const whole = stackBlock(blocks);
  return whole.heightMm <= pageMm ? [whole] : blocks;
}

/** Two blocks beside each other, the second `offsetMm` to the right of the first. */
export const besideBlock = (left: Block, right: Block, offsetMm: number): Block => ({
  heightMm: Math.max(left.heightMm, right.heightMm),
  draw: (corner) => [...left.draw(corner), ...right.draw(paper(corner.x + offsetMm, corner.y))],
});

/** Blocks on top of each other as one that is not divided. */
export const stackBlock = (blocks: readonly Block[]): Block => ({
  heightMm: heightOfAll(blocks),
  draw: (corner) => {
    let top = corner.y;
    return blocks.flatMap((block) => {
      const marks = block.draw(paper(corner.x, top));
      top -= block.heightMm;
      return marks;
    });
  },
});
