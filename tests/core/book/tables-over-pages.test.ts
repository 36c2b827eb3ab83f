import { describe, expect, it } from "vitest";
import { breakLines, flowBlocks, paragraphBlock, tableBlocks } from "../../../core/book/blocks.ts";
import { readLettering } from "../../../core/book/index.ts";
import type { Mark } from "../../../core/book/types.ts";
import { readFonts } from "../../read-fonts.ts";

const lettering = readLettering(readFonts());
const AREA = { left: 0, right: 174, bottom: 0, top: 100 };

const rowsOf = (count: number) => Array.from({ length: count }, (_, i) => [`row ${i + 1}`]);
const table = (count: number) =>
  tableBlocks([{ title: "Rows", widthMm: 60 }], rowsOf(count), lettering, "Rib A4");
const wordsOf = (marks: readonly Mark[]) =>
  marks.flatMap((mark) => (mark.kind === "text" ? [mark.text] : []));

describe("a line of words", () => {
  it("never ends between a figure and its unit, unless they are too wide for it together", () => {
    const look = { face: "sans", heightMm: 2.5 } as const;
    const words = "pins every 100 mm, 24.5 g of glue, wait 6 h at 20 °C; 12 % is lost.";
    for (let widthMm = 16; widthMm < 120; widthMm += 0.5) {
      const lines = breakLines(words, widthMm, lettering, look);
      expect(lines.join(" ")).toBe(words);
      for (const line of lines) expect(line, `${widthMm} mm`).not.toMatch(/\d$/);
    }
    expect(breakLines("100 mm", 7, lettering, look)).toEqual(["100", "mm"]);
  });
});

describe("a table that goes on over a page", () => {
  it("says there of what it is, under its heading set again", () => {
    const [first = [], second = []] = flowBlocks(table(25), AREA);
    expect(wordsOf(first)).not.toContain("Rib A4, continued");
    expect(wordsOf(second).slice(0, 2)).toEqual(["Rib A4, continued", "Rows"]);
  });

  it("leaves no row alone on either side of the break, and loses none", () => {
    for (let count = 2; count < 45; count++) {
      const pages = flowBlocks([paragraphBlock("word", 100, lettering), ...table(count)], AREA).map((marks) =>
        wordsOf(marks).filter((words) => words.startsWith("row ")),
      );
      expect(pages.flat()).toEqual(rowsOf(count).flat());
      for (const rows of pages) expect(rows.length, `${count} rows`).toBeGreaterThan(1);
    }
  });

  it("keeps words that follow off its last line", () => {
    const [marks = []] = flowBlocks([...table(3), paragraphBlock("Then these words.", 100, lettering)], AREA);
    const text = marks.find((mark) => mark.kind === "text" && mark.text.startsWith("Then"));
    const lines = marks.flatMap((mark) => (mark.kind === "line" ? mark.points.map(({ y }) => y) : []));
    const top = text?.kind === "text" ? text.at.y + text.heightMm : Number.NaN;
    expect(Math.min(...lines) - top).toBeGreaterThan(1);
  });
});
