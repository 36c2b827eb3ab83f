import { describe, expect, it } from "vitest";
import { type DrawingSet, drawBook, drawTemplates } from "../../../core/book/index.ts";
import type { Project } from "../../../core/project/index.ts";
import { type StarterName, starterOf, usualNumbers } from "../../../core/starters/index.ts";
import { writePdf } from "../../../core/writers/index.ts";
import { readExample } from "../../read-example.ts";
import { readFonts } from "../../read-fonts.ts";
import { type ReadPage, type ReadText, readPages } from "../writers/read-pages.ts";
import { asPrinted, printedDemo, printedSets } from "./printed-demo.ts";

const fonts = readFonts();
const demo = printedDemo();
const practice = asPrinted(readExample("practice-piece"));
const tunnels = asPrinted(startedTray("two-tunnels"));

/** A tray as a starter begins it. */
function startedTray(name: StarterName): Project {
  const starter = starterOf(name);
  const made = starter?.make(usualNumbers(starter), { id: "tray", issuedOn: "2026-11-25" });
  if (!made?.ok) throw new Error(`${name} cannot be begun`);
  return made.value;
}

/** Letters of 2.5 mm are the smallest on A4 and A3 (ISO 3098, ISO 128); capitals of the two faces are 0.698 and 0.73 of the em. */
const LEAST_EM_MM = 2.5 / 0.73;
/** A printer leaves a border free (common driver value, 12 pt). */
const EDGE_MM = 4;
/** Letters are measured with the space around them. */
const TOUCH_MM = 0.25;

interface Box {
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
}

type Corner = readonly [number, number];

/** From the base line to the top of the capitals, drawn in by `byMm` on all sides. */
function cornersOf({ x, y, widthMm, emMm, turnRad }: ReadText, byMm: number): readonly Corner[] {
  const [c, s] = [Math.cos(turnRad), Math.sin(turnRad)];
  const capital = 0.698 * emMm - byMm;
  return [
    [byMm, byMm],
    [widthMm - byMm, byMm],
    [widthMm - byMm, capital],
    [byMm, capital],
  ].map(([along = 0, up = 0]): Corner => [x + along * c - up * s, y + along * s + up * c]);
}

/** Whether two turned rectangles overlap: no side of either has them apart (separating axes; Gottschalk and others 1996). */
function doOverlap(a: readonly Corner[], b: readonly Corner[]): boolean {
  return [a, b].every((one) =>
    [0, 1].every((side) => {
      const [[x0, y0], [x1, y1]] = [one[side] ?? [0, 0], one[side + 1] ?? [0, 0]];
      const spans = [a, b].map((corners) => corners.map(([x, y]) => x * (x1 - x0) + y * (y1 - y0)));
      const [p = [], q = []] = spans;
      return Math.min(...p) < Math.max(...q) && Math.min(...q) < Math.max(...p);
    }),
  );
}

function boxOf(text: ReadText): Box {
  const corners = cornersOf(text, 0);
  const [xs, ys] = [corners.map(([one]) => one), corners.map(([, one]) => one)];
  return { left: Math.min(...xs), right: Math.max(...xs), bottom: Math.min(...ys), top: Math.max(...ys) };
}

function collisionsOf(page: ReadPage, number: number): readonly string[] {
  const boxed = page.texts.map((text) => ({ text, corners: cornersOf(text, TOUCH_MM / 2) }));
  return boxed.flatMap(({ text, corners }, i) =>
    boxed
      .slice(i + 1)
      .filter((other) => doOverlap(corners, other.corners))
      .map((other) => `page ${number}: "${text.text}" over "${other.text.text}"`),
  );
}

/** Lines as thick as outlines and cuts, mm (ISO 128-2: 0.5); thin ones may run under words. */
const THICK_MM = 0.45;
/** Pages on which not even a thin line runs through a code: they are read by the codes. */
const READ_BY_CODES = /^(Stock|Jig|Cradle|Cloth plan|Panel|Glue-up)/;

/** Words of a page that a line runs through: from a thickness on. */
function struckOf(page: ReadPage, number: number, fromMm: number): readonly string[] {
  const strokes = page.lines
    .filter(({ widthMm }) => widthMm >= fromMm)
    .flatMap(({ points, closed }) => {
      const ends = closed ? [...points, ...points.slice(0, 1)] : points;
      return ends.slice(1).map((to, i) => [ends[i] ?? to, to] as const);
    });
  return page.texts
    .filter((text) => strokes.some(([from, to]) => doesStrike(text, from, to)))
    .map(({ text }) => `page ${number}: a line through "${text}"`);
}

interface Point {
  readonly x: number;
  readonly y: number;
}

/** Whether a stroke runs through the letters: seen along their line, part of it lies between base line and capitals. */
function doesStrike(text: ReadText, from: Point, to: Point): boolean {
  const [c, s] = [Math.cos(text.turnRad), Math.sin(text.turnRad)];
  const seen = ({ x, y }: Point) => [
    (x - text.x) * c + (y - text.y) * s,
    (y - text.y) * c - (x - text.x) * s,
  ];
  const [a, b] = [seen(from), seen(to)];
  const limits = [
    [TOUCH_MM, text.widthMm - TOUCH_MM],
    [TOUCH_MM, 0.698 * text.emMm - TOUCH_MM],
  ];
  let [first, last] = [0, 1];
  limits.forEach(([low = 0, high = 0], side) => {
    const [start, way] = [a[side] ?? 0, (b[side] ?? 0) - (a[side] ?? 0)];
    if (Math.abs(way) < 1e-9) {
      if (start < low || start > high) first = 2;
      return;
    }
    const shares = [(low - start) / way, (high - start) / way];
    first = Math.max(first, Math.min(...shares));
    last = Math.min(last, Math.max(...shares));
  });
  return first < last;
}

function outsideOf(page: ReadPage, number: number): readonly string[] {
  return page.texts
    .filter((text) => {
      const { left, right, bottom, top } = boxOf(text);
      return (
        left < EDGE_MM || right > page.widthMm - EDGE_MM || bottom < EDGE_MM || top > page.heightMm - EDGE_MM
      );
    })
    .map(({ text }) => `page ${number}: "${text}"`);
}

type NamedSet = readonly [string, () => DrawingSet];

const BOOKS: readonly NamedSet[] = [
  ["the build book of the demo tray", () => printedSets().book],
  ["the build book of the practice piece", () => drawBook(practice, fonts)],
  ["the build book of two tunnels", () => drawBook(tunnels, fonts)],
];
const onPaper = (design: typeof demo, size: "A4" | "A3" | "roll") => {
  const paper = { ...design.project.paper, size };
  return drawTemplates({ ...design, project: { ...design.project, paper } }, fonts).set;
};
const TEMPLATES: readonly NamedSet[] = [
  ["the A4 templates of the demo tray", () => printedSets().templates],
  ["the A3 templates of the demo tray", () => onPaper(demo, "A3")],
  ["the templates of the demo tray on a roll", () => onPaper(demo, "roll")],
  ["the A4 templates of the practice piece", () => onPaper(practice, "A4")],
];
const SETS: readonly NamedSet[] = [...BOOKS, ...TEMPLATES];

describe.each(SETS)("%s, read back", { timeout: 240_000 }, (_, draw) => {
  const reading = readPages(writePdf(draw(), fonts));

  it("prints no text over another", async () => {
    expect((await reading).flatMap((page, i) => collisionsOf(page, i + 1))).toEqual([]);
  });

  it("has no text in the border that a printer leaves free", async () => {
    expect((await reading).flatMap((page, i) => outsideOf(page, i + 1))).toEqual([]);
  });

  it("has no letters smaller than 2.5 mm", async () => {
    const small = (await reading).flatMap((page, i) =>
      page.texts.filter(({ emMm }) => emMm < LEAST_EM_MM - 0.01).map(({ text }) => `page ${i + 1}: ${text}`),
    );
    expect(small).toEqual([]);
  });
});

describe.each(BOOKS)("%s, read by its codes", { timeout: 240_000 }, (_, draw) => {
  const set = draw();
  const reading = readPages(writePdf(set, fonts));

  it("has no code that a line runs through, and no words through which a thick line runs", async () => {
    const struck = (await reading).flatMap((page, i) => {
      const isByCodes = READ_BY_CODES.test(set.pages[i]?.name ?? "");
      return struckOf(page, i + 1, isByCodes ? 0 : THICK_MM);
    });
    expect(struck).toEqual([]);
  });
});

/** Names of lines stand on their line, also in a plank that is narrower than they are. */
const ON_A_LINE = /"(rib \w+|fence .*|centre line.*|datum.*|\d+)"$/;

/** A page without the 100 mm square, which is printed over whatever is there. */
const withoutSquare = (page: ReadPage): ReadPage => ({
  ...page,
  lines: page.lines.filter(({ points }) => {
    const spanOf = (values: readonly number[]) => Math.max(...values) - Math.min(...values);
    const spans = [spanOf(points.map(({ x }) => x)), spanOf(points.map(({ y }) => y))];
    return !spans.every((spanMm) => Math.abs(spanMm - 100) < 0.01);
  }),
});

describe.each(TEMPLATES)("%s, read to cut by", { timeout: 240_000 }, (_, draw) => {
  const reading = readPages(writePdf(draw(), fonts));

  it("have no words through which a line to cut by runs, so that none is cut apart", async () => {
    const struck = (await reading).flatMap((page, i) => struckOf(page, i + 1, THICK_MM));
    expect(struck.filter((words) => !ON_A_LINE.test(words))).toEqual([]);
  });

  it("have the words of a rib's base line between the lines of heights", async () => {
    const struck = (await reading).flatMap((page, i) => struckOf(withoutSquare(page), i + 1, 0));
    expect(struck.filter((words) => words.includes("base line, stands"))).toEqual([]);
  });
});

describe("pages of pictures in the book of the demo tray", () => {
  const { pages } = printedSets().book;
  const topTextOf = (page: (typeof pages)[number]) =>
    page.marks
      .flatMap((mark) => (mark.kind === "text" && mark.text !== "" ? [mark] : []))
      .reduce((top, mark) => (mark.at.y > top.at.y ? mark : top)).text;

  it("begin with what is shown: no ply of a face stands on a page without the face's name", () => {
    const flats = pages.filter(({ name }) => name === "Patches, laid flat");
    expect(flats.length).toBeGreaterThan(2);
    for (const page of flats) expect(topTextOf(page)).toMatch(/face|side/i);
  });

  it("have the order to cut in on the page of the sheet", () => {
    const sheets = pages.filter(({ name }) => name.startsWith("Stock"));
    expect(sheets).toHaveLength(demo.stock.reduce((sum, { sheets: laid }) => sum + laid.length, 0));
  });
});
