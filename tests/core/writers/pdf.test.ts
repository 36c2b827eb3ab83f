import { describe, expect, it } from "vitest";
import { type DrawingPage, type DrawingSet, drawBook, drawTemplates } from "../../../core/book/index.ts";
import { writePdf, writePdfByPage } from "../../../core/writers/index.ts";
import { readFonts } from "../../read-fonts.ts";
import { practiceDesign } from "../book/practice-design.ts";
import { readPages } from "./read-pages.ts";

const fonts = readFonts();
const PAGE_BOX_MM = 0.01;
const COORDINATE_MM = 0.0005;

const setOf = (...pages: readonly DrawingPage[]): DrawingSet => ({
  title: "Lines",
  issuedOn: "2026-11-25",
  projectId: "lines",
  pages,
});

const page = (widthMm: number, heightMm: number, marks: DrawingPage["marks"] = []): DrawingPage => ({
  name: "page",
  widthMm,
  heightMm,
  marks,
});

const asText = (bytes: Uint8Array): string => Buffer.from(bytes).toString("latin1");

describe("PDF writer", { timeout: 60_000 }, () => {
  it("keeps every page's size and orientation", async () => {
    const sizes = [
      [210, 297],
      [297, 210],
      [215.9, 279.4],
      [914, 5000],
      [5000, 914],
      [610, 400],
    ] as const;
    const pages = await readPages(writePdf(setOf(...sizes.map(([w, h]) => page(w, h))), fonts));
    pages.forEach((read, i) => {
      expect(Math.abs(read.widthMm - (sizes[i]?.[0] ?? 0))).toBeLessThan(PAGE_BOX_MM);
      expect(Math.abs(read.heightMm - (sizes[i]?.[1] ?? 0))).toBeLessThan(PAGE_BOX_MM);
    });
    expect(pages).toHaveLength(sizes.length);
  });

  it("puts lines where they are, y up from the lower left corner", async () => {
    const points = [
      { x: 10.12345, y: 20 },
      { x: 500, y: 700.54321 },
      { x: 33.3, y: 1999 },
    ];
    const marks = [{ kind: "line", points, closed: true, style: "cut" }] as const;
    const [read] = await readPages(writePdf(setOf(page(914, 2000, marks)), fonts));
    const line = read?.lines[0];
    expect(line?.widthMm).toBeCloseTo(0.5, 4);
    expect(line?.closed).toBe(true);
    points.forEach((point, i) => {
      expect(Math.abs((line?.points[i]?.x ?? 0) - point.x)).toBeLessThan(COORDINATE_MM);
      expect(Math.abs((line?.points[i]?.y ?? 0) - point.y)).toBeLessThan(COORDINATE_MM);
    });
  });

  it("sets a text level, turned and anchored where its mark says", async () => {
    const text = (anchor: "start" | "middle" | "end", turnRad: number) =>
      ({
        kind: "text",
        at: { x: 100, y: 150 },
        text: "S2R-a",
        heightMm: 5,
        face: "mono",
        anchor,
        turnRad,
      }) as const;
    const turns = [0, 0.4, Math.PI / 2];
    for (const turn of turns) {
      const marks = [text("start", turn), text("middle", turn), text("end", turn)];
      const pages = await readPages(writePdf(setOf(...marks.map((mark) => page(210, 297, [mark]))), fonts));
      const starts = pages.map((one) => one.texts[0]);
      const width = starts[0]?.widthMm ?? 0;
      expect(width).toBeGreaterThan(15);
      [0, 0.5, 1].forEach((share, i) => {
        expect(starts[i]?.x).toBeCloseTo(100 - share * width * Math.cos(turn), 1);
        expect(starts[i]?.y).toBeCloseTo(150 - share * width * Math.sin(turn), 1);
        expect(starts[i]?.turnRad).toBeCloseTo(turn, 3);
      });
    }
  });

  it("keeps signs beyond ASCII and shows those that a face lacks as a box", async () => {
    const marks = [
      {
        kind: "text",
        at: { x: 20, y: 100 },
        text: "\u22123.5° Ø 20 → ≤",
        heightMm: 5,
        face: "sans",
        anchor: "start",
        turnRad: 0,
      },
      {
        kind: "text",
        at: { x: 20, y: 80 },
        text: "S2漢",
        heightMm: 5,
        face: "mono",
        anchor: "start",
        turnRad: 0,
      },
    ] as const;
    const [read] = await readPages(writePdf(setOf(page(210, 297, marks)), fonts));
    const words = read?.texts.map((one) => one.text).join("|") ?? "";
    expect(words).toContain("\u22123.5° Ø 20 → ≤");
    expect(words).toContain("S2□");
  });

  it("asks for no scaling, carries the document's date, and is the same bytes every time", () => {
    const design = practiceDesign();
    const once = writePdf(drawTemplates(design, fonts).set, fonts);
    const again = writePdf(drawTemplates(practiceDesign(), fonts).set, fonts);
    expect(Buffer.compare(Buffer.from(once), Buffer.from(again))).toBe(0);
    expect(asText(once)).toContain("/PrintScaling /None");
    expect(asText(once)).toContain("/CreationDate (D:20261125000000+00'00')");
    const book = writePdf(drawBook(design, fonts), fonts);
    expect(Buffer.compare(Buffer.from(book), Buffer.from(writePdf(drawBook(design, fonts), fonts)))).toBe(0);
  });

  it("gives two projects two file ids", () => {
    const idOf = (projectId: string) =>
      /\/ID \[ <([0-9A-F]{32})>/.exec(asText(writePdf({ ...setOf(page(210, 297)), projectId }, fonts)))?.[1];
    expect(idOf("one")).toHaveLength(32);
    expect(idOf("one")).not.toBe(idOf("two"));
  });

  it("tells its progress and stops when asked", () => {
    const set = setOf(page(210, 297), page(210, 297), page(210, 297));
    const seen: number[] = [];
    writePdf(set, fonts, { onPage: (done, all) => seen.push(done / all) });
    expect(seen).toEqual([1 / 3, 2 / 3, 1]);
    let asked = 0;
    const stopped = writePdf(set, fonts, { isCancelled: () => ++asked > 1 });
    expect(stopped).toHaveLength(0);
    expect([...writePdfByPage(set, fonts)]).toEqual([1, 2, 3]);
  });

  it("refuses a page longer than the format allows instead of clamping it", () => {
    expect(() => writePdf(setOf(page(914, 5081)), fonts)).toThrow(/can be written/);
  });
});
