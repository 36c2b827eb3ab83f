import type { Box } from "./boxes.ts";
import { boxesOverlap, boxHolds, boxOf, growBox, markBox, textCorners, widthOf } from "./boxes.ts";
import { clipLine } from "./clip.ts";
import { gaugeFrames, gaugeMarks, gaugeWords } from "./gauge-marks.ts";
import { longBar, longBarMarks, longBarWords } from "./long-bar.ts";
import {
  type LineMark,
  lineMark,
  type Placing,
  paper,
  placeMark,
  placePoint,
  type TextMark,
  textMark,
} from "./marks.ts";
import type { PageWindow } from "./page-window.ts";
import { setOutCrosses } from "./set-out-crosses.ts";
import type { PlacedPiece, TemplateLayout, Tile } from "./template-layouts.ts";
import { cutLength, type TemplateSetting } from "./template-setting.ts";
import { tileHeading } from "./tile-heading.ts";
import type { DrawingPage, Mark, PaperPoint } from "./types.ts";
import { uprightText } from "./upright-text.ts";

/** One page of the templates: what lies in its window, cut exactly at the window's border. */
export function tilePage(
  layout: TemplateLayout,
  tile: Tile,
  pageNumber: number,
  setting: TemplateSetting,
): DrawingPage {
  const { window } = setting;
  const shown: Box = {
    left: tile.origin.x,
    bottom: tile.origin.y,
    right: tile.origin.x + window.widthMm,
    top: tile.origin.y + layout.windowHeightMm,
  };
  const placing = windowPlacing(window, tile.origin);
  const inside = layout.pieces.filter((placed) => boxesOverlap(growBox(placed.box, 0.01), shown));
  const drawn = inside.flatMap((placed) => placed.lines.flatMap((line) => clipLine(line, shown)));
  const words = layout.pieces.flatMap((placed) => wordsIn(placed, shown, setting));
  const room = {
    inner: growBox(shown, -window.overlapMm - 1),
    taken: [...gaugesOn(window, tile), ...words.map((mark) => markBox(mark, setting.lettering))],
    lines: drawn,
    lettering: setting.lettering,
  };
  const setOut: Mark[] = [];
  for (const placed of inside.filter(({ hasGaps }) => hasGaps)) {
    const taken = [...room.taken, ...setOut.map((mark) => markBox(mark, setting.lettering))];
    setOut.push(...setOutCrosses(placed, { ...room, taken }));
  }
  const printed = [...words, ...setOut].map((mark) => placeMark(mark, placing));
  const heightMm = window.cutToLength ? cutLength(layout, window) : window.paperHeightMm;
  const bar = longBar(layout, window);
  const barWords = (bar ? longBarWords(bar, tile) : []).map((mark) => ({
    ...mark,
    at: placePoint(mark.at, placing),
  }));
  return {
    name: `${tile.name} of layout ${layout.number}`,
    widthMm: window.paperWidthMm,
    heightMm,
    marks: [
      ...drawn.map((mark) => placeMark(mark, placing)),
      ...printed,
      ...[...crosses(shown, window), ...(bar ? longBarMarks(bar, shown) : [])].map((mark) =>
        placeMark(mark, placing),
      ),
      ...gaugeMarks(window).filter(({ kind }) => kind !== "text"),
      ...clearTexts([barWords, ...neighbours(layout, tile, setting), ...gaugeWords(window)], printed, {
        lines: drawn.map((line) => ({ ...line, points: line.points.map((p) => placePoint(p, placing)) })),
        heightMm,
        setting,
      }),
      ...tileHeading({ layout, tile, inside, pageNumber }, setting),
    ],
  };
}

/** The bar and the lettered side of the square, in the frame of the layout. */
const gaugesOn = (window: PageWindow, { origin }: Tile): readonly Box[] =>
  gaugeFrames(window).map((box) => ({
    left: box.left + origin.x,
    right: box.right + origin.x,
    bottom: box.bottom + origin.y,
    top: box.top + origin.y,
  }));

/** From the layout to the paper: the print correction stretches about the window's lower left corner. */
const windowPlacing = (window: PageWindow, origin: PaperPoint): Placing => ({
  quarterTurned: false,
  scaleX: window.correctionX,
  scaleY: window.correctionY,
  move: paper(
    window.marginMm - origin.x * window.correctionX,
    window.marginMm - origin.y * window.correctionY,
  ),
});

/** The words of a piece that belong on a page: whole ones; what fits on no page whole moves inside one. */
function wordsIn(placed: PlacedPiece, shown: Box, setting: TemplateSetting): readonly Mark[] {
  const labels = setting.labels.get(placed.piece.id) ?? [];
  return labels.flatMap((label) => wordIn(placeMark(label, placed.placing), shown, setting));
}

function wordIn(mark: Mark, shown: Box, setting: TemplateSetting): readonly Mark[] {
  switch (mark.kind) {
    case "text":
      return textIn(uprightText(mark), shown, setting);
    case "line":
      return clipLine(mark, shown);
    case "circle":
      return boxHolds(shown, markBox(mark, setting.lettering)) ? [mark] : [];
  }
}

function textIn(mark: TextMark, shown: Box, setting: TemplateSetting): readonly TextMark[] {
  const box = boxOf(textCorners(mark, setting.lettering));
  if (boxHolds(shown, box)) return [mark];
  const { window } = setting;
  const middle = paper((box.left + box.right) / 2, (box.bottom + box.top) / 2);
  const isHere =
    isIn(middle, shown) &&
    Math.min(middle.x - shown.left, shown.right - middle.x) >= window.overlapMm / 2 - 1e-9 &&
    Math.min(middle.y - shown.bottom, shown.top - middle.y) >= window.overlapMm / 2 - 1e-9;
  if (!isHere || widthOf(box) > widthOf(shown)) return [];
  const dx = Math.max(0, shown.left - box.left) - Math.max(0, box.right - shown.right);
  const dy = Math.max(0, shown.bottom - box.bottom) - Math.max(0, box.top - shown.top);
  return [{ ...mark, at: paper(mark.at.x + dx, mark.at.y + dy) }];
}

const isIn = (p: PaperPoint, box: Box): boolean =>
  p.x >= box.left && p.x <= box.right && p.y >= box.bottom && p.y <= box.top;

/** Arm of a registration cross, mm. */
const CROSS_ARM_MM = 4;

/** Crosses in the middle of the overlap's corners: the same places of the layout on both neighbours. */
function crosses(shown: Box, window: PageWindow): readonly Mark[] {
  const half = window.overlapMm / 2;
  const arm = Math.min(CROSS_ARM_MM, half);
  if (arm <= 0) return [];
  return [shown.left + half, shown.right - half].flatMap((x) =>
    [shown.bottom + half, shown.top - half].flatMap((y) => [
      lineMark([paper(x - arm, y), paper(x + arm, y)], "register", "register"),
      lineMark([paper(x, y - arm), paper(x, y + arm)], "register", "register"),
    ]),
  );
}

interface PageAround {
  readonly lines: readonly LineMark[];
  readonly heightMm: number;
  readonly setting: TemplateSetting;
}

/**
 * Each text at the first of its places on the paper that is clear of all that is printed, else of the words and the thick
 * lines, else of the words.
 */
function clearTexts(
  wanted: readonly (readonly TextMark[])[],
  printed: readonly Mark[],
  { lines, heightMm, setting: { lettering, window } }: PageAround,
): readonly TextMark[] {
  const taken = printed.filter(({ kind }) => kind === "text").map((mark) => markBox(mark, lettering));
  const thick = lines.filter(({ style }) => style === "cut" || style === "outline");
  const paperBox = growBox(boxOf([paper(0, 0), paper(window.paperWidthMm, heightMm)]), -window.marginMm);
  const isOff = (crossing: readonly LineMark[]) => (mark: TextMark) => {
    const box = markBox(mark, lettering);
    return (
      boxHolds(paperBox, box) &&
      !taken.some((other) => boxesOverlap(other, box)) &&
      crossing.every((line) => clipLine(line, box).length === 0)
    );
  };
  return wanted.flatMap((choices) => {
    const chosen =
      choices.find(isOff(lines)) ?? choices.find(isOff(thick)) ?? choices.find(isOff([])) ?? choices[0];
    if (chosen === undefined) return [];
    taken.push(markBox(chosen, lettering));
    return [chosen];
  });
}

/** Along an edge, where the name of the neighbour may stand, best first. */
const TAPE_SHARES = [
  0.62, 0.75, 0.5, 0.38, 0.25, 0.87, 0.13, 0.56, 0.68, 0.44, 0.31, 0.81, 0.19, 0.59, 0.65, 0.47, 0.53, 0.34,
  0.72,
];

/** A second row inward, where the first runs along a line. */
const TAPE_ROW_MM = 4;

/** The names of the pages that are taped to this one, at its edges: for each the places where it may stand. */
function neighbours(
  layout: TemplateLayout,
  tile: Tile,
  setting: TemplateSetting,
): readonly (readonly TextMark[])[] {
  const { window } = setting;
  const nameAt = (column: number, row: number) =>
    layout.tiles.find((other) => other.column === column && other.row === row)?.name;
  const width = window.widthMm * window.correctionX;
  const height = layout.windowHeightMm * window.correctionY;
  const [x, y] = [window.marginMm, window.marginMm];
  const places: readonly (readonly [
    string | undefined,
    (share: number, row: number) => PaperPoint,
    number,
  ])[] = [
    [
      nameAt(tile.column - 1, tile.row),
      (share, row) => paper(x + 4 + row * TAPE_ROW_MM, y + height * share),
      Math.PI / 2,
    ],
    [
      nameAt(tile.column + 1, tile.row),
      (share, row) => paper(x + width - 1.5 - row * TAPE_ROW_MM, y + height * share),
      Math.PI / 2,
    ],
    [
      nameAt(tile.column, tile.row - 1),
      (share, row) => paper(x + width * share, y + height - 4 - row * TAPE_ROW_MM),
      0,
    ],
    [
      nameAt(tile.column, tile.row + 1),
      (share, row) => paper(x + width * share, y + 1.5 + row * TAPE_ROW_MM),
      0,
    ],
  ];
  return places.flatMap(([name, spotAt, turnRad]) =>
    name === undefined
      ? []
      : [
          [0, 1].flatMap((row) =>
            TAPE_SHARES.map((share) =>
              textMark(spotAt(share, row), `tape ${name} here`, {
                anchor: "middle",
                turnRad,
                layer: "register",
              }),
            ),
          ),
        ],
  );
}
