import { describe, expect, it } from "vitest";
import { designTray } from "../../../core/design.ts";
import { crossSection } from "../../../web/board/cross-section.ts";
import { columnsUnder, numbersOver } from "../../../web/board/cut-numbers.ts";
import type { Box, Transform } from "../../../web/board/viewport.ts";
import { lengthsIn } from "../../../web/lengths/index.ts";
import { readExample } from "../../read-example.ts";

const box: Box = { leftPx: 0, topPx: 0, widthPx: 1000, heightPx: 300 };
const lengths = lengthsIn("mm");
const scale = (pxPerMm: number): Transform => ({
  originXPx: 0,
  originYPx: 250,
  pxPerMmAcross: pxPerMm,
  pxPerMmUp: pxPerMm,
});
const cut = crossSection(designTray(readExample("hill-climb-floor")), 1000);
const widthOf = (lines: readonly string[]) => Math.max(...lines.map(({ length }) => length)) * 7.3;

describe("numbers of the cross-section", () => {
  it("under each fence stands how far out it is, its lower edge, and its depth, which add up to the sheet's height", () => {
    const columns = columnsUnder(cut, lengths, scale(1), 3);
    expect(columns[0]?.lines).toEqual(["y 0", "z", "deep"]);
    const fences = columns.filter(({ yMm, lines }) => yMm > 0 && lines.length === 3);
    expect(fences).toHaveLength(2);
    for (const { yMm, lines } of fences) {
      expect(Number(lines[0])).toBeCloseTo(yMm, 1);
      expect(Number(lines[1]) + Number(lines[2])).toBeCloseTo(60, 0);
    }
  });

  it("columns never cover one another; fences stay longer than the ends of sheets, the outermost longest", () => {
    for (let pxPerMm = 1; pxPerMm > 0.05; pxPerMm *= 0.8) {
      const columns = columnsUnder(cut, lengths, scale(pxPerMm), 3);
      columns.slice(1).forEach((column, i) => {
        const before = columns[i] ?? column;
        const apartPx = (column.yMm - before.yMm) * pxPerMm;
        expect(apartPx).toBeGreaterThanOrEqual((widthOf(column.lines) + widthOf(before.lines)) / 2);
      });
      expect(columns[0]?.yMm).toBe(0);
      if (columns.length > 1) expect(columns.at(-1)?.lines.length).toBeGreaterThan(0);
    }
    const few = columnsUnder(cut, lengths, scale(0.15), 3);
    expect(few.some(({ lines }) => lines.length === 3)).toBe(true);
  });

  it("where the view is low only as many lines stand as there is height for, one at least", () => {
    expect(columnsUnder(cut, lengths, scale(1), 2).every(({ lines }) => lines.length <= 2)).toBe(true);
    expect(columnsUnder(cut, lengths, scale(1), 0).every(({ lines }) => lines.length === 1)).toBe(true);
  });

  it("numbers over the cut never cover one another, and stay inside the view", () => {
    for (let pxPerMm = 1; pxPerMm > 0.05; pxPerMm *= 0.8) {
      const numbers = numbersOver(cut, () => true, lengths, scale(pxPerMm), box);
      expect(numbers.length).toBeGreaterThan(0);
      numbers.forEach((one, i) => {
        expect(one.leftPx + one.widthPx).toBeLessThanOrEqual(box.widthPx);
        for (const other of numbers.slice(i + 1)) {
          const isApart =
            one.leftPx >= other.leftPx + other.widthPx ||
            other.leftPx >= one.leftPx + one.widthPx ||
            Math.abs(one.topPx - other.topPx) >= 12;
          expect(isApart).toBe(true);
        }
      });
    }
  });
});
