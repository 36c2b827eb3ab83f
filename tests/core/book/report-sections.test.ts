import { describe, expect, it } from "vitest";
import { drawBook, reportOf } from "../../../core/book/index.ts";
import { designTray } from "../../../core/design.ts";
import { readExample } from "../../read-example.ts";
import { readFonts } from "../../read-fonts.ts";

const demo = designTray(readExample("hill-climb-floor"));

describe("cross-sections in the report", () => {
  const { sections } = reportOf(demo);

  it("are those of the book, with the widths that it prints", () => {
    const words = drawBook(demo, readFonts())
      .pages.filter(({ name }) => name === "Cross-sections")
      .flatMap(({ marks }) => marks.map((mark) => (mark.kind === "text" ? mark.text : "")));
    expect(sections.length).toBeGreaterThan(2);
    for (const { letter, xMm, widthMm } of sections) {
      expect(words).toContain(`${letter}–${letter}: x ${xMm.toFixed(1).replace("-", "−")}`);
      expect(words).toContain(widthMm.toFixed(1));
    }
  });

  it("are as wide to the left as to the right, and reach from the lowest end to no lower", () => {
    for (const { widthMm, heightMm, lowestZMm, ends } of sections) {
      const [first, last] = [ends[0], ends.at(-1)];
      expect((first?.yMm ?? 0) + (last?.yMm ?? 0)).toBeCloseTo(0, 2);
      expect((last?.yMm ?? 0) - (first?.yMm ?? 0)).toBeLessThanOrEqual(widthMm + 1e-6);
      expect((last?.yMm ?? 0) - (first?.yMm ?? 0)).toBeGreaterThan(widthMm - 8);
      for (const { zMm } of ends) {
        expect(zMm).toBeGreaterThanOrEqual(lowestZMm - 1e-6);
        expect(zMm).toBeLessThan(lowestZMm + heightMm);
      }
    }
  });
});
