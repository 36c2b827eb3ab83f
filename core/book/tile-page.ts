import { formatMm } from "../foundation/index.ts";
import type { Project } from "../project/index.ts";
import type { Box } from "./boxes.ts";
import { boxesOverlap, boxHolds, boxOf, growBox, markBox, textCorners, widthOf } from "./boxes.ts";
import { clipLine } from "./clip.ts";
import { bladeWords } from "./cutting-words.ts";
import { gaugeFrames, gaugeMarks, gaugeWords } from "./gauge-marks.ts";
import type { Lettering } from "./lettering.ts";
import { arrowMarks, lineMark, type Placing, paper, placeMark, type TextMark, textMark } from "./marks.ts";
import { HEADING_MM, type PageWindow } from "./page-window.ts";
import { setOutCrosses } from "./set-out-crosses.ts";
import { shorten } from "./shorten.ts";
import type { PlacedPiece, TemplateLayout, Tile } from "./template-layouts.ts";
import type { DrawingPage, Mark, PaperPoint } from "./types.ts";
import { uprightText } from "./upright-text.ts";

/** What every page of the templates has in common. */
export interface TemplateSetting {
  readonly title: string;
  readonly window: PageWindow;
  readonly lettering: Lettering;
  readonly pageCount: number;
  readonly cutting: Project["cutting"];
  /** The words of every piece in its own frame, by the piece's code. */
  readonly labels: ReadonlyMap<string, readonly Mark[]>;
}

/** The instruction on every page. */
export const PRINT_WORDS = "print at 100 %, no scaling; check the bar with a steel rule";

/** How to cut ribs and plates by their lines, beside the words about foam. */
export const BOARD_WORDS = "metal, boards: to its centre";

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
  return {
    name: `${tile.name} of layout ${layout.number}`,
    widthMm: window.paperWidthMm,
    heightMm: window.cutToLength ? cutLength(layout, window) : window.paperHeightMm,
    marks: [
      ...drawn.map((mark) => placeMark(mark, placing)),
      ...printed,
      ...crosses(shown, window).map((mark) => placeMark(mark, placing)),
      ...gaugeMarks(window).filter(({ kind }) => kind !== "text"),
      ...clearTexts([...neighbours(layout, tile, setting), ...gaugeWords(window)], printed, setting),
      ...heading({ layout, tile, inside, pageNumber }, setting),
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

/** Length of a page from the roll, mm. */
export const cutLength = (layout: { readonly windowHeightMm: number }, window: PageWindow): number =>
  2 * window.marginMm + HEADING_MM + layout.windowHeightMm * window.correctionY;

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

/** Each text at the first of its places that is clear of what is printed already, else at its first. */
function clearTexts(
  wanted: readonly (readonly TextMark[])[],
  printed: readonly Mark[],
  { lettering }: TemplateSetting,
): readonly TextMark[] {
  const taken = printed.filter(({ kind }) => kind === "text").map((mark) => markBox(mark, lettering));
  return wanted.flatMap((choices) => {
    const isClear = (mark: TextMark) => !taken.some((box) => boxesOverlap(box, markBox(mark, lettering)));
    const chosen = choices.find(isClear) ?? choices[0];
    if (chosen === undefined) return [];
    taken.push(markBox(chosen, lettering));
    return [chosen];
  });
}

/** Along an edge, where the name of the neighbour may stand, best first. */
const TAPE_SHARES = [0.62, 0.75, 0.5, 0.38, 0.25, 0.87, 0.13];

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
  const places: readonly (readonly [string | undefined, (share: number) => PaperPoint, number])[] = [
    [nameAt(tile.column - 1, tile.row), (share) => paper(x + 4, y + height * share), Math.PI / 2],
    [nameAt(tile.column + 1, tile.row), (share) => paper(x + width - 1.5, y + height * share), Math.PI / 2],
    [nameAt(tile.column, tile.row - 1), (share) => paper(x + width * share, y + height - 4), 0],
    [nameAt(tile.column, tile.row + 1), (share) => paper(x + width * share, y + 1.5), 0],
  ];
  return places.flatMap(([name, spotAt, turnRad]) =>
    name === undefined
      ? []
      : [
          TAPE_SHARES.map((share) =>
            textMark(spotAt(share), `tape ${name} here`, { anchor: "middle", turnRad, layer: "register" }),
          ),
        ],
  );
}

interface HeadingContent {
  readonly layout: TemplateLayout;
  readonly tile: Tile;
  readonly inside: readonly PlacedPiece[];
  readonly pageNumber: number;
}

/** The strip of words above the window. */
function heading(content: HeadingContent, setting: TemplateSetting): readonly Mark[] {
  const { layout, tile, inside, pageNumber } = content;
  const { window, lettering } = setting;
  const left = window.marginMm;
  const right = window.paperWidthMm - window.marginMm;
  const top = (window.cutToLength ? cutLength(layout, window) : window.paperHeightMm) - window.marginMm;
  const count = `page ${pageNumber} of ${setting.pageCount}`;
  const origin = `tile origin u ${formatMm(tile.origin.x)} v ${formatMm(tile.origin.y)}`;
  const nameEnd = left + lettering.widthMm(tile.name, "mono", 7) + 5;
  const ids = inside.map((placed) => placed.piece.id).join(" ");
  const countStart = right - lettering.widthMm(count, "sans", 3.5) - 3;
  return [
    textMark(paper(left, top - 7.5), tile.name, { heightMm: 7, face: "mono" }),
    textMark(
      paper(nameEnd, top - 7.5),
      shorten(ids, "mono", 5, { lettering, roomMm: countStart - nameEnd }),
      {
        heightMm: 5,
        face: "mono",
      },
    ),
    textMark(paper(right, top - 7.5), count, { heightMm: 3.5, anchor: "end" }),
    ...faces(inside, paper(left, top - 12.5), { lettering, right }),
    textMark(
      paper(left, top - 16.5),
      shorten(`${setting.title}, layout ${layout.number}, ${origin}`, "sans", 2.5, {
        lettering,
        roomMm: right - left,
      }),
    ),
    textMark(paper(left, top - 20.5), `${PRINT_WORDS}; ${lineWords(inside, setting)}`),
  ];
}

/**
 * How to cut by the lines on a page: ribs of board and plates of metal have no kerf in their lines, foam has; where
 * several lie on one page foam is named, since the map says the rest.
 */
function lineWords(inside: readonly PlacedPiece[], { cutting }: TemplateSetting): string {
  const stuffs = new Set(inside.map(({ piece }) => piece.stuff));
  if (stuffs.has("foam")) return `${stuffs.size > 1 ? "foam: " : ""}${bladeWords(cutting)}`;
  return stuffs.has("metal") ? METAL_LINE_WORDS : BOARD_LINE_WORDS;
}

const BOARD_LINE_WORDS = "saw up to the centre of the line";
const METAL_LINE_WORDS = "cut to the centre of the line, bend lines in pencil, never scribed";

/** For each piece on the page which face is up and where front or top is. */
function faces(
  inside: readonly PlacedPiece[],
  from: PaperPoint,
  room: { readonly lettering: Lettering; readonly right: number },
): readonly Mark[] {
  const marks: Mark[] = [];
  let x = from.x;
  for (const { piece, placing } of inside) {
    const words = `${piece.id} ${piece.face}, ${piece.arrow.word}`;
    const width = room.lettering.widthMm(words, "sans", 2.5);
    if (x + width + 8 > room.right) break;
    const turn = piece.arrow.turnRad + (placing.quarterTurned ? Math.PI / 2 : 0);
    const middle = paper(x + width + 4, from.y + 1.2);
    const [dx, dy] = [2.2 * Math.cos(turn), 2.2 * Math.sin(turn)];
    marks.push(
      textMark(paper(x, from.y), words),
      ...arrowMarks(paper(middle.x - dx, middle.y - dy), paper(middle.x + dx, middle.y + dy), 2.5, "thin"),
    );
    x += width + 12;
  }
  return marks;
}
