import { describe, expect, it } from "vitest";
import { besideColumns, halvedTable } from "../../../core/book/beside-columns.ts";
import { type Column, flowBlocks, gapBlock } from "../../../core/book/blocks.ts";
import { heightOf } from "../../../core/book/boxes.ts";
import { readLettering } from "../../../core/book/index.ts";
import { CONTENT } from "../../../core/book/page-frame.ts";
import type { Mark } from "../../../core/book/types.ts";
import { readFonts } from "../../read-fonts.ts";

const lettering = readLettering(readFonts());
const PAGE_MM = heightOf(CONTENT);

const COLUMNS: readonly Column[] = [
  { title: "Place", widthMm: 60 },
  { title: "Height", widthMm: 60, face: "mono", anchor: "end" },
];
const rowsOf = (count: number) => Array.from({ length: count }, (_, i) => [`row ${i + 1}`, `${i + 1}.5`]);

const flow = (count: number, roomMm = PAGE_MM, columns = COLUMNS) =>
  flowBlocks(besideColumns(columns, rowsOf(count), { roomMm, freshMm: PAGE_MM, lettering }), CONTENT);

interface Told {
  readonly words: string;
  readonly x: number;
  readonly y: number;
}
const rowsIn = (marks: readonly Mark[]): readonly Told[] =>
  marks.flatMap((mark) =>
    mark.kind === "text" && mark.text.startsWith("row ")
      ? [{ words: mark.text, x: mark.at.x, y: mark.at.y }]
      : [],
  );

describe("a long table of narrow columns", () => {
  it("stands in one column where it fits, else in two that are read down the left and then down the right", () => {
    const [one = []] = flow(10);
    expect(new Set(rowsIn(one).map(({ x }) => x)).size).toBe(1);
    const [two = [], ...more] = flow(60);
    expect(more).toEqual([]);
    const rows = rowsIn(two);
    expect(rows.map(({ words }) => words)).toEqual(rowsOf(60).map(([first]) => first));
    expect(new Set(rows.map(({ x }) => x)).size).toBe(2);
    expect(rows[30]?.y).toBe(rows[0]?.y);
  });

  it("is not divided where it fits a page, and loses no row where it does not", () => {
    for (let count = 1; count < 230; count += 7) {
      const pages = flow(count, 60);
      expect(pages.flatMap(rowsIn).map(({ words }) => words)).toEqual(rowsOf(count).map(([first]) => first));
      for (const marks of pages) for (const { y } of rowsIn(marks)) expect(y).toBeGreaterThan(CONTENT.bottom);
      if (count <= 80) expect(pages.length).toBe(1);
    }
  });

  it("keeps a column as wide as it is where it is written in by hand, and then to one column", () => {
    const written = COLUMNS.map((column) => ({ ...column, isWrittenIn: true as const }));
    const rows = flow(60, PAGE_MM, written).flatMap(rowsIn);
    expect(rows.length).toBe(60);
    expect(new Set(rows.map(({ x }) => x)).size).toBe(1);
  });
});

/** Words before the table, mm. */
const HEAD_MM = 60;
const halved = (count: number) =>
  halvedTable(COLUMNS, rowsOf(count), { freshMm: PAGE_MM - HEAD_MM, lettering });

describe("a short table", () => {
  it("is halved, but not where it has next to nothing to halve", () => {
    const columnsOf = (count: number) =>
      new Set(
        flowBlocks(halved(count), CONTENT)
          .flatMap(rowsIn)
          .map(({ x }) => x),
      ).size;
    expect(columnsOf(3)).toBe(1);
    expect(columnsOf(12)).toBe(2);
  });

  it("goes on over pages where it is longer than one, inside the frame and with every row", () => {
    const head = { ...gapBlock(HEAD_MM), keepsWithNext: true as const };
    for (const count of [3, 40, 70, 75, 90, 200, 400]) {
      const pages = flowBlocks([head, ...halved(count)], CONTENT).map(rowsIn);
      expect(pages.flat().map(({ words }) => words)).toEqual(rowsOf(count).map(([first]) => first));
      for (const { y } of pages.flat()) expect(y, `${count} rows`).toBeGreaterThan(CONTENT.bottom);
    }
  });
});
