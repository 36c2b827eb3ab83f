import { describe, expect, it } from "vitest";
import { drawTemplates, planTemplates } from "../../../core/book/index.ts";
import { writePdf } from "../../../core/writers/index.ts";
import { readFonts } from "../../read-fonts.ts";
import { readPages } from "../writers/read-pages.ts";
import { practiceDesign } from "./practice-design.ts";

const fonts = readFonts();
const TRUE_MM = 0.005;

describe("the long bar over pages that are taped", { timeout: 120_000 }, () => {
  it.each([
    ["A4", 1, 1],
    ["Letter", 1.01, 0.985],
  ] as const)(
    "is as long as its words say when the pages of %s are laid together, and clear of the cut line (correction %d, %d)",
    async (size, correctionX, correctionY) => {
      const whole = practiceDesign({ size, correctionX, correctionY });
      const design = { ...whole, jig: { ...whole.jig, ribs: [] } };
      const { marginMm } = design.project.paper;
      const pages = await readPages(writePdf(drawTemplates(design, fonts).set, fonts));
      const spots = pages.flatMap(({ texts, lines }) => {
        const words = texts.map(({ text }) => text).join(" ");
        const [, u, v] = /tile origin u ([\d.]+) v ([\d.]+)/.exec(words) ?? [];
        if (u === undefined || v === undefined) return [];
        return lines.map(({ widthMm, points }) => ({
          widthMm,
          points: points.map((p) => ({
            x: (p.x - marginMm) / correctionX + Number(u),
            y: (p.y - marginMm) / correctionY + Number(v),
          })),
        }));
      });
      const told = pages
        .flatMap(({ texts }) => texts)
        .map(({ text }) => /long bar (\d+) mm,/.exec(text)?.[1]);
      const lengthMm = Number(told.find((one) => one !== undefined));
      expect(lengthMm).toBeGreaterThanOrEqual(500);
      // The bar lies along the left edge of the layout, where nothing else stands upright so near to it.
      const along = spots.filter(
        ({ widthMm, points }) =>
          Math.abs(widthMm - 0.18) < 0.001 &&
          points.every(({ x }) => Math.abs(x - (points[0]?.x ?? 0)) < TRUE_MM && x > 5.1 && x < 6.5),
      );
      const ys = along.flatMap(({ points }) => points.map(({ y }) => y)).sort((a, b) => a - b);
      expect(Math.abs((ys.at(-1) ?? 0) - (ys[0] ?? 0) - lengthMm)).toBeLessThan(TRUE_MM);
      const bar = along[0]?.points[0]?.x ?? 0;
      const cuts = spots.filter(({ widthMm }) => Math.abs(widthMm - 0.5) < 0.001);
      for (const { points } of cuts) for (const { x } of points) expect(Math.abs(x - bar)).toBeGreaterThan(1);
      // Every page between has its stretch of it: no gap is left.
      const spans = along
        .map(({ points }) => points.map(({ y }) => y).sort((a, b) => a - b))
        .sort((a, b) => (a[0] ?? 0) - (b[0] ?? 0));
      spans.slice(1).forEach(([from = 0], i) => {
        expect(from).toBeLessThanOrEqual((spans[i]?.at(-1) ?? 0) + TRUE_MM);
      });
    },
  );

  it("is left out where one page is enough", () => {
    const { set } = drawTemplates(practiceDesign({ size: "A0" }), fonts);
    const words = set.pages.flatMap(({ marks }) =>
      marks.map((mark) => (mark.kind === "text" ? mark.text : "")),
    );
    expect(
      planTemplates(practiceDesign({ size: "A0" })).plan?.layouts.every(({ tiles }) => tiles.length === 1),
    ).toBe(true);
    expect(words.filter((one) => one.startsWith("long bar"))).toEqual([]);
  });
});
