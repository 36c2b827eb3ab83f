import { describe, expect, it } from "vitest";
import { type DrawingSet, drawBook, drawTemplates } from "../../../core/book/index.ts";
import { designTray } from "../../../core/design.ts";
import { writePdf } from "../../../core/writers/index.ts";
import { readExample } from "../../read-example.ts";
import { readFonts } from "../../read-fonts.ts";
import { type ReadPage, type ReadText, readPages } from "../writers/read-pages.ts";

const fonts = readFonts();
const demo = designTray(readExample("hill-climb-floor"));
const practice = designTray(readExample("practice-piece"));

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

const SETS: readonly (readonly [string, () => DrawingSet])[] = [
  ["the build book of the demo tray", () => drawBook(demo, fonts)],
  ["the A4 templates of the demo tray", () => drawTemplates(demo, fonts).set],
  ["the build book of the practice piece", () => drawBook(practice, fonts)],
  ["the A4 templates of the practice piece", () => drawTemplates(practice, fonts).set],
];

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
