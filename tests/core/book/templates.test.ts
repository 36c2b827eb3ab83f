import { describe, expect, it } from "vitest";
import type { Design } from "../../../core/book/index.ts";
import { drawTemplates, planTemplates, readLettering } from "../../../core/book/index.ts";
import { PaperNames, type Project } from "../../../core/project/index.ts";
import { writePdf } from "../../../core/writers/index.ts";
import { readFonts } from "../../read-fonts.ts";
import { type ReadLine, type ReadPage, readPages } from "../writers/read-pages.ts";
import { practiceDesign } from "./practice-design.ts";

const fonts = readFonts();
const PAGE_BOX_MM = 0.01;
const REASSEMBLED_MM = 0.02;
const GAUGE_MM = 0.005;

/** Sizes as the trade lists them, mm: ISO 216 and ANSI Y14.1 (published). */
const SIZES: Readonly<Record<string, readonly [number, number]>> = {
  A4: [210, 297],
  A3: [297, 420],
  Letter: [215.9, 279.4],
  Tabloid: [279.4, 431.8],
  A1: [594, 841],
  A0: [841, 1189],
};

const CORRECTIONS = [
  [1, 1],
  [1.01, 0.985],
] as const;

/** As drawn, and with what a test print may ask for: either way on each axis, up to the limits. */
const REASSEMBLED = [
  [1, 1],
  [1.004, 0.997],
  [0.98, 1.02],
] as const;

/** Writing and reading back a file takes its time on a busy machine. */
const SLOW_MS = 60_000;

const printed = async (design: Design): Promise<readonly ReadPage[]> =>
  readPages(writePdf(drawTemplates(design, fonts).set, fonts));

const lengthOf = (line: ReadLine): number =>
  line.points.slice(1).reduce((sum, p, i) => {
    const before = line.points[i] ?? p;
    return sum + Math.hypot(p.x - before.x, p.y - before.y);
  }, 0);

const isThick = (line: ReadLine): boolean => Math.abs(line.widthMm - 0.5) < 0.001;
const isGauge = (line: ReadLine): boolean => Math.abs(line.widthMm - 0.18) < 0.001;

/** The window's corner in the layout, as printed on the page. */
function tileOrigin(page: ReadPage): { readonly u: number; readonly v: number } | undefined {
  const found = /layout (\d+), tile origin u ([\d.]+) v ([\d.]+)/.exec(
    page.texts.map((one) => one.text).join(" "),
  );
  return found === null ? undefined : { u: Number(found[2]), v: Number(found[3]) };
}

const layoutOf = (page: ReadPage): string | undefined =>
  /layout (\d+), tile/.exec(page.texts.map((one) => one.text).join(" "))?.[1];

describe("true-size templates", { timeout: SLOW_MS }, () => {
  it("take ten A4 pages or fewer for the practice piece, the map among them", () => {
    const { plan } = planTemplates(practiceDesign({ size: "A4" }));
    expect(plan?.pageCount).toBeLessThanOrEqual(10);
    expect(drawTemplates(practiceDesign({ size: "A4" }), fonts).set.pages).toHaveLength(plan?.pageCount ?? 0);
  });

  it.each(PaperNames)("come on pages of exactly %s", async (size) => {
    const design = practiceDesign({ size, rollWidthMm: 914 });
    const pages = await printed(design);
    expect(pages.length).toBeGreaterThan(1);
    for (const page of pages) {
      const [width, height] = SIZES[size] ?? [914, page.heightMm];
      expect(Math.abs(page.widthMm - width)).toBeLessThan(PAGE_BOX_MM);
      expect(Math.abs(page.heightMm - height)).toBeLessThan(PAGE_BOX_MM);
      expect(page.heightMm).toBeLessThanOrEqual(5000);
    }
  });

  it("use of a roll only the length that the pieces need", () => {
    const { set } = drawTemplates(practiceDesign({ size: "roll", rollWidthMm: 914 }), fonts);
    expect(set.pages[1]?.heightMm).toBeLessThan(600);
  });

  it.each(PaperNames.flatMap((size) => REASSEMBLED.map(([x, y]) => [size, x, y] as const)))(
    "give the strip's outline back when the pages of %s are laid together (correction %d, %d)",
    async (size, correctionX, correctionY) => {
      const whole = practiceDesign({ size, rollWidthMm: 450, correctionX, correctionY });
      const design = { ...whole, jig: { ...whole.jig, ribs: [] } };
      const margin = design.project.paper.marginMm;
      const pages = await printed(design);
      const pieces = pages
        .filter((page) => layoutOf(page) === "1")
        .flatMap((page) => {
          const origin = tileOrigin(page);
          return page.lines.filter(isThick).map((line) =>
            line.points.map((p) => ({
              x: (p.x - margin) / correctionX + (origin?.u ?? 0),
              y: (p.y - margin) / correctionY + (origin?.v ?? 0),
            })),
          );
        });
      const outline = (design.strips[0]?.outlineMm ?? []).map((p) => ({ x: p.u, y: p.v }));
      const placed = fitOutline(outline, pieces.flat());
      for (const point of placed) {
        expect(nearest(point, pieces)).toBeLessThan(REASSEMBLED_MM);
      }
      const closed = [...placed, placed[0] ?? { x: 0, y: 0 }];
      for (const piece of pieces) {
        for (const point of piece) {
          expect(nearest(point, [closed])).toBeLessThan(REASSEMBLED_MM);
        }
      }
    },
  );

  it.each(PaperNames)("carry a 200 mm bar and a 100 mm square on every page of %s", async (size) => {
    for (const [cx, cy] of size === "A4" || size === "roll" ? CORRECTIONS : CORRECTIONS.slice(0, 1)) {
      const pages = await printed(
        practiceDesign({ size, rollWidthMm: 610, correctionX: cx, correctionY: cy }),
      );
      for (const page of pages) {
        const gauges = page.lines.filter(isGauge);
        const bars = gauges.filter(
          (line) =>
            line.points.length === 2 &&
            (Math.abs(lengthOf(line) - 200 * cx) < GAUGE_MM ||
              Math.abs(lengthOf(line) - 200 * cy) < GAUGE_MM),
        );
        const squares = gauges.filter(
          (line) => line.points.length === 5 && Math.abs(lengthOf(line) - 200 * (cx + cy)) < GAUGE_MM,
        );
        expect(bars.length).toBeGreaterThanOrEqual(1);
        expect(squares).toHaveLength(1);
      }
    }
  });

  it("print every page that carries a line of a piece and none without", () => {
    for (const size of ["A4", "Letter", "A3"] as const) {
      const { plan } = planTemplates(practiceDesign({ size }));
      for (const layout of plan?.layouts ?? []) {
        const window = plan?.window;
        if (window === undefined) continue;
        for (let row = 0; row < layout.rows; row++) {
          for (let column = 0; column < layout.columns; column++) {
            const left = column * (window.widthMm - window.overlapMm);
            const bottom = (layout.rows - 1 - row) * (window.heightMm - window.overlapMm);
            const right = left + window.widthMm;
            const top = bottom + layout.windowHeightMm;
            const carries = layout.pieces.some((placed) =>
              placed.lines.some((line) =>
                sampled(line.points, line.closed).some(
                  (p) => p.x > left && p.x < right && p.y > bottom && p.y < top,
                ),
              ),
            );
            const isPrinted = layout.tiles.some((tile) => tile.row === row && tile.column === column);
            expect(isPrinted).toBe(carries);
          }
        }
      }
    }
  });

  it("put registration crosses at the same place of the layout on neighbours", async () => {
    const design = practiceDesign({ size: "A4" });
    const margin = design.project.paper.marginMm;
    const places = new Map<string, number>();
    for (const page of await printed(design)) {
      const origin = tileOrigin(page);
      if (layoutOf(page) !== "1" || origin === undefined) continue;
      for (const cross of crossesOf(page)) {
        const key = `${Math.round(cross.x - margin + origin.u)},${Math.round(cross.y - margin + origin.v)}`;
        places.set(key, (places.get(key) ?? 0) + 1);
      }
    }
    const shared = [...places.values()].filter((count) => count > 1);
    expect(shared.length).toBeGreaterThanOrEqual(6);
    expect([...places.values()].filter((count) => count === 4)).toHaveLength(2);
  });

  it("say on every page which piece, page and layout it is, which face is up and how to print", async () => {
    const pages = await printed(practiceDesign({ size: "A4" }));
    pages.forEach((page, i) => {
      const words = page.texts.map((one) => one.text).join(" ");
      expect(words).toContain(`page ${i + 1} of ${pages.length}`);
      expect(words).toContain("print at 100 %, no scaling; check the bar with a steel rule");
      if (i === 0) return;
      expect(words).toMatch(/\b[A-Z]\d\b/);
      expect(words).toMatch(
        /S1R upper face up, right hand, forward|L1R seen from the left, front to the left, up/,
      );
      expect(words).toContain("Practice piece");
    });
  });

  it.each([
    ["knife", 0, "waste", "cut to the centre of the line"],
    ["saw", 3, "waste", "the blade takes the waste side of the line"],
    ["hot-wire", 1.2, "middle", "the middle of the blade runs on the line"],
    ["saw", 3, "part", "the blade takes the part side of the line"],
  ] as const)(
    "say how a %s (kerf %d, %s) runs along the line, on the map and on the pages",
    (tool, kerfMm, bladeSide, blade) => {
      const { project, ...rest } = practiceDesign({ size: "A4" });
      const cutting = { ...project.cutting, tool, kerfMm, bladeSide, trimMm: 10 };
      const { pages } = drawTemplates({ ...rest, project: { ...project, cutting } }, fonts).set;
      const lettering = readLettering(fonts);
      pages.forEach((page, i) => {
        const texts = page.marks.flatMap((mark) => (mark.kind === "text" ? [mark] : []));
        const isFoam = i === 0 || texts.some(({ text }) => text === "S1R");
        const said = texts.filter(({ text }) => /(centre|side) of the line|on the line/.test(text));
        for (const { text } of said) expect(text, page.name).toContain(isFoam ? blade : "saw up to");
        expect(said.length, page.name).toBeGreaterThan(0);
        for (const { at, text, heightMm } of said.filter(({ text }) => /^(Foam|print)/.test(text)))
          expect(at.x + lettering.widthMm(text, "sans", heightMm)).toBeLessThanOrEqual(page.widthMm - 6.35);
        const boards = texts.find(({ text }) => text.includes("boards: "));
        if (i > 0) return;
        // The legend lies inside the 100 mm square.
        const width = lettering.widthMm(boards?.text ?? "", "sans", boards?.heightMm ?? 0);
        expect(width).toBeGreaterThan(0);
        expect(width).toBeLessThan(82);
      });
    },
  );

  it("print ribs alike once, with every name on them, and no rib with a straight top", () => {
    const design = practiceDesign();
    const names = planTemplates(design).plan?.layouts.flatMap((one) => one.pieces.map((p) => p.piece.name));
    expect(names).toContain("cut 2: L1R, L2R");
    const ribs = design.jig.ribs.map((rib) => ({ ...rib, straightTop: true }));
    const straight = planTemplates({ ...design, jig: { ...design.jig, ribs } });
    expect(straight.plan?.layouts.flatMap((one) => one.pieces.map((p) => p.piece.id))).toEqual(["S1R"]);
  });

  it("keep every text on the paper", async () => {
    for (const size of ["A4", "Letter", "roll"] as const) {
      for (const page of await printed(practiceDesign({ size }))) {
        for (const text of page.texts) {
          const end = {
            x: text.x + text.widthMm * Math.cos(text.turnRad),
            y: text.y + text.widthMm * Math.sin(text.turnRad),
          };
          for (const p of [text, end]) {
            expect(p.x).toBeGreaterThanOrEqual(0);
            expect(p.x).toBeLessThanOrEqual(page.widthMm);
            expect(p.y).toBeGreaterThanOrEqual(0);
            expect(p.y).toBeLessThanOrEqual(page.heightMm);
          }
        }
      }
    }
  });

  it("name paper that cannot be printed on instead of printing wrongly", () => {
    const kindOf = (paper: Partial<Project["paper"]>) => {
      const { set, problems } = drawTemplates(practiceDesign(paper), fonts);
      expect(set.pages).toHaveLength(0);
      return problems.map((problem) => problem.kind);
    };
    expect(kindOf({ size: "roll", rollWidthMm: 120 })).toEqual(["page-too-small"]);
    expect(kindOf({ size: "A4", marginMm: 60 })).toEqual(["page-too-small"]);
    expect(kindOf({ overlapMm: Number.NaN })).toEqual(["number-out-of-range"]);
    expect(kindOf({ correctionX: 1.2 })).toEqual(["number-out-of-range"]);
  });
});

interface Point {
  readonly x: number;
  readonly y: number;
}

/** The outline as it lies in the layout, turned by a quarter or not, moved so that its box matches the print. */
function fitOutline(outline: readonly Point[], print: readonly Point[]): readonly Point[] {
  const box = boxOf(print);
  const choices = [outline, outline.map((p) => ({ x: -p.y, y: p.x }))];
  const fitting = choices.find((points) => {
    const own = boxOf(points);
    return Math.abs(own.right - own.left - (box.right - box.left)) < 0.2;
  });
  const own = boxOf(fitting ?? []);
  return (fitting ?? []).map((p) => ({ x: p.x - own.left + box.left, y: p.y - own.bottom + box.bottom }));
}

function boxOf(points: readonly Point[]) {
  const xs = points.map((p) => p.x);
  const ys = points.map((p) => p.y);
  return { left: Math.min(...xs), right: Math.max(...xs), bottom: Math.min(...ys), top: Math.max(...ys) };
}

const nearest = (p: Point, lines: readonly (readonly Point[])[]): number =>
  Math.min(...lines.flatMap((line) => line.slice(1).map((b, i) => distanceToChord(p, line[i] ?? b, b))));

function distanceToChord(p: Point, a: Point, b: Point): number {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const square = dx * dx + dy * dy;
  const t = square === 0 ? 0 : Math.min(1, Math.max(0, ((p.x - a.x) * dx + (p.y - a.y) * dy) / square));
  return Math.hypot(p.x - a.x - t * dx, p.y - a.y - t * dy);
}

/** Points along a line every 0.2 mm. */
function sampled(points: readonly Point[], closed: boolean): readonly Point[] {
  const first = points[0];
  const all = closed && first !== undefined ? [...points, first] : points;
  return all.slice(1).flatMap((b, i) => {
    const a = all[i] ?? b;
    const count = Math.max(1, Math.ceil(Math.hypot(b.x - a.x, b.y - a.y) / 0.2));
    return Array.from({ length: count + 1 }, (_, k) => ({
      x: a.x + ((b.x - a.x) * k) / count,
      y: a.y + ((b.y - a.y) * k) / count,
    }));
  });
}

/** Middles of level and upright thin lines of one length that cross there. */
function crossesOf(page: ReadPage): readonly Point[] {
  const arms = page.lines.filter((line) => isGauge(line) && Math.abs(lengthOf(line) - 8) < 0.01);
  const middles = arms.map((line) => {
    const box = boxOf(line.points);
    return { x: (box.left + box.right) / 2, y: (box.bottom + box.top) / 2 };
  });
  return middles.filter((p, i) => middles.slice(0, i).some((q) => Math.hypot(p.x - q.x, p.y - q.y) < 0.01));
}
