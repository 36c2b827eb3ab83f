import type { Strip } from "../cutting/index.ts";
import { at, formatNumber, toRadians } from "../foundation/index.ts";
import { type Box, type Grid, gridIn, placesOf } from "./boxes.ts";
import { gaugeMarks } from "./gauge-marks.ts";
import { arrowMarks, lineMark, loopMark, paper, placeMark, textMark } from "./marks.ts";
import { type NeededAngle, neededAngles } from "./needed-angles.ts";
import { GAUGE_INSET_MM, type PageWindow } from "./page-window.ts";
import { shorten } from "./shorten.ts";
import { PRINT_WORDS, type TemplateSetting } from "./template-setting.ts";
import { mapArea, mapHeight } from "./tile-map.ts";
import type { DrawingPage, Mark, PaperPoint } from "./types.ts";

/** A card to cut out: its long side stands on the foam, both others lean to it by one angle each. */
interface Card {
  readonly left: NeededAngle;
  /** Square where a last angle is left alone. */
  readonly right: NeededAngle;
}

/** Sizes of a card and the room between two, mm. */
const CARD_WIDTH_MM = 54;
const CARD_HEIGHT_MM = 30;
const ROOM_MM = 4;
/** What is left of a card's long side at its top, at least. */
const LEAST_TOP_MM = 14;
const MOST_PAGES = 2;

const cardGrid = (window: PageWindow): Grid =>
  gridIn(mapArea(window, mapHeight(window)), CARD_WIDTH_MM, CARD_HEIGHT_MM, ROOM_MM);

/** The cards of a tray, two angles on each, most used first. */
function cardsFor(strips: readonly Strip[], window: PageWindow): readonly Card[] {
  const angles = neededAngles(strips, 2 * MOST_PAGES * placesOf(cardGrid(window)));
  const square: NeededAngle = { angleDeg: 0, lengthMm: 0 };
  return Array.from({ length: Math.ceil(angles.length / 2) }, (_, i) => ({
    left: at(angles, 2 * i),
    right: angles[2 * i + 1] ?? square,
  }));
}

/** Pages of bevel gauges that a tray needs: none where every edge is cut square. */
export const gaugePageCount = (strips: readonly Strip[], window: PageWindow): number =>
  Math.ceil(cardsFor(strips, window).length / placesOf(cardGrid(window)));

/**
 * Paper angles at true size for the bevels that the tray needs, rounded to 0.5°, most used first: cards to cut out and
 * stand on the foam beside the blade. `firstPage` is the number of the first of them.
 */
export function bevelGaugePages(
  strips: readonly Strip[],
  firstPage: number,
  setting: TemplateSetting,
): readonly DrawingPage[] {
  const { window } = setting;
  const cards = cardsFor(strips, window);
  const grid = cardGrid(window);
  const heightMm = mapHeight(window);
  const count = gaugePageCount(strips, window);
  return Array.from({ length: count }, (_, page) => ({
    name: count === 1 ? "Bevel gauges" : `Bevel gauges ${page + 1}`,
    widthMm: window.paperWidthMm,
    heightMm,
    marks: [
      ...heading(firstPage + page, heightMm, setting),
      ...cards
        .slice(page * placesOf(grid), (page + 1) * placesOf(grid))
        .flatMap((card, i) => cardMarks(card, cardPlace(i, grid, window, heightMm)))
        .map((mark) => corrected(mark, window)),
      ...gaugeMarks(window),
      ...howTo(window),
    ],
  }));
}

/** The print correction stretches about the window's lower left corner, as on every page. */
const corrected = (mark: Mark, { marginMm, correctionX, correctionY }: PageWindow): Mark =>
  placeMark(mark, {
    quarterTurned: false,
    scaleX: correctionX,
    scaleY: correctionY,
    move: paper(marginMm * (1 - correctionX), marginMm * (1 - correctionY)),
  });

/** The lower left corner of a card. */
function cardPlace(index: number, grid: Grid, window: PageWindow, heightMm: number): PaperPoint {
  const area = mapArea(window, heightMm);
  const row = Math.floor(index / grid.columns);
  return paper(
    area.left + (index % grid.columns) * (CARD_WIDTH_MM + ROOM_MM),
    area.top - CARD_HEIGHT_MM - row * (CARD_HEIGHT_MM + ROOM_MM),
  );
}

function cardMarks({ left, right }: Card, corner: PaperPoint): readonly Mark[] {
  const [tanLeft, tanRight] = [left, right].map(({ angleDeg }) => Math.tan(toRadians(angleDeg)));
  const leanMm = (tanLeft ?? 0) + (tanRight ?? 0);
  const heightMm = Math.min(CARD_HEIGHT_MM, (CARD_WIDTH_MM - LEAST_TOP_MM) / (leanMm || 1e-9));
  const [x, y] = [corner.x, corner.y];
  const [topLeft, topRight] = [x + heightMm * (tanLeft ?? 0), x + CARD_WIDTH_MM - heightMm * (tanRight ?? 0)];
  const outline = [
    paper(x, y),
    paper(x + CARD_WIDTH_MM, y),
    paper(topRight, y + heightMm),
    paper(topLeft, y + heightMm),
  ];
  const text = (at: PaperPoint, words: string, anchor: "start" | "end", large: boolean) =>
    textMark(at, words, { heightMm: large ? 5 : 2.5, face: large ? "mono" : "sans", anchor, layer: "words" });
  const ofAngle = ({ angleDeg, lengthMm }: NeededAngle, at: PaperPoint, anchor: "start" | "end") => [
    text(at, angleDeg === 0 ? "square" : `${formatNumber(angleDeg, 1)}°`, anchor, angleDeg > 0),
    ...(lengthMm > 0 ? [text(paper(at.x, at.y - 3), lengthWords(lengthMm), anchor, false)] : []),
  ];
  // Near the long side a leaning side leaves the most room.
  const inset = (tan: number) => 2 + 4.5 * tan;
  return [
    loopMark(outline, "cut", "gauge"),
    ...ofAngle(left, paper(x + inset(tanLeft ?? 0), y + 4.5), "start"),
    ...ofAngle(right, paper(x + CARD_WIDTH_MM - inset(tanRight ?? 0), y + 4.5), "end"),
  ];
}

/** Metres where there are some, else whole centimetres in mm. */
const lengthWords = (lengthMm: number): string =>
  lengthMm >= 1000
    ? `${formatNumber(lengthMm / 1000, 1)} m`
    : `${formatNumber(Math.max(10, 10 * Math.round(lengthMm / 10)), 0)} mm`;

function heading(page: number, heightMm: number, setting: TemplateSetting): readonly Mark[] {
  const { window, lettering } = setting;
  const [left, right] = [window.marginMm, window.paperWidthMm - window.marginMm];
  const top = heightMm - window.marginMm;
  const count = `page ${page} of ${setting.pageCount}`;
  const roomMm = right - left - lettering.widthMm(count, "sans", 3.5) - 5;
  return [
    textMark(paper(left, top - 6), shorten(setting.title, "bold", 5, { lettering, roomMm }), {
      heightMm: 5,
      face: "bold",
    }),
    textMark(paper(right, top - 6), count, { heightMm: 3.5, anchor: "end" }),
    textMark(paper(left, top - 12), "Bevel gauges: the angles off square that the edges need", {
      heightMm: 3.5,
    }),
    textMark(paper(left, top - 17), `${PRINT_WORDS}.`),
    textMark(
      paper(left, top - 22),
      "Glue the page to card, cut the cards out, most used first. Below an angle: so much edge has it.",
    ),
  ];
}

/** How a card is held, in the 100 mm square: words, and both cases as a cut seen along the edge. */
function howTo(window: PageWindow): readonly Mark[] {
  const square = squareOf(window);
  const [left, top] = [square.left + 4, square.top - 7];
  const words = [
    "1  Lay the strip with the face shown up.",
    "2  Long side of the card on the foam, the leaning",
    "    side at the thick line, square to the edge.",
    "3  Air (outboard) face longer: card on the part.",
    "    Upper (inboard) face longer: on the waste.",
    "4  Hold the blade along the leaning side.",
  ];
  return [
    ...words.map((line, i) => textMark(paper(left, top - i * 6), line, { layer: "legend" })),
    ...caseMarks(paper(square.left + 8, square.bottom + 18), 1),
    ...caseMarks(paper(square.left + 55, square.bottom + 18), -1),
  ];
}

/** The foam seen along its edge, the part on the left: the card on it (air face longer) or on the waste beside it. */
function caseMarks(corner: PaperPoint, sign: 1 | -1): readonly Mark[] {
  const [thick, lean, width] = [10, 4, 36];
  const top = corner.y + thick;
  const line = corner.x + width / 2;
  const [low, high] = [line + sign * lean, line - sign * lean * 1.8];
  const card =
    sign === 1
      ? [paper(line, top), paper(line - 15, top), paper(line - 13, top + 18), paper(high, top + 18)]
      : [paper(line, top), paper(line + 15, top), paper(line + 13, top + 18), paper(high, top + 18)];
  return [
    lineMark(
      [paper(corner.x, top), paper(line, top), paper(low, corner.y), paper(corner.x, corner.y)],
      "outline",
    ),
    lineMark([paper(line, top), paper(corner.x + width, top)], "hidden"),
    lineMark([paper(low, corner.y), paper(corner.x + width, corner.y)], "hidden"),
    loopMark(card, "thin"),
    ...arrowMarks(paper(high + sign * 0.6, top + 22), paper(high, top + 18), 2, "thin"),
    textMark(paper(corner.x + 3, corner.y + 3.6), "part", { heightMm: 2.5 }),
    textMark(paper(corner.x + width - 1, corner.y + 3.6), "waste", { heightMm: 2.5, anchor: "end" }),
    textMark(paper(corner.x, corner.y - 4), sign === 1 ? "air face longer" : "upper face longer", {
      heightMm: 2.5,
    }),
  ];
}

function squareOf(window: PageWindow): Box {
  const square = gaugeMarks(window).find((mark) => mark.kind === "line" && mark.points.length === 5);
  const points = square?.kind === "line" ? square.points : [];
  const [a, c] = [points[0] ?? paper(GAUGE_INSET_MM, GAUGE_INSET_MM), points[2] ?? paper(104, 104)];
  return { left: a.x, bottom: a.y, right: c.x, top: c.y };
}
