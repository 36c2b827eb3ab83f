import { at } from "../foundation/index.ts";
import { type Box, boxesOverlap, boxOf, growBox, heightOf, widthOf } from "./boxes.ts";
import { clipLine } from "./clip.ts";
import { fewestTiles, spareBeside } from "./fewest-tiles.ts";
import { type LineMark, type Placing, paper, placeMark, placePoint } from "./marks.ts";
import { leastWindowHeight, type PageWindow } from "./page-window.ts";
import type { Piece } from "./piece.ts";
import type { PaperPoint } from "./types.ts";

/** A piece where it lies in its layout, turned or not; `lines` are its lines there. */
export interface PlacedPiece {
  readonly piece: Piece;
  readonly placing: Placing;
  readonly box: Box;
  readonly lines: readonly LineMark[];
  /** Those that decide which pages are printed, and whether pages between them are left out. */
  readonly needed: readonly LineMark[];
  /** Pages on which it lies are left out, since nothing that is needed of it lies on them. */
  readonly hasGaps: boolean;
}

/** One page of a layout: row letter from above, column number from the left, and the place of its window. */
export interface Tile {
  readonly name: string;
  readonly column: number;
  readonly row: number;
  /** The window's lower left corner in the layout, u to the right, v up. */
  readonly origin: PaperPoint;
}

/** Pages that are taped to one large paper, and the pieces on it. */
export interface TemplateLayout {
  readonly number: number;
  readonly pieces: readonly PlacedPiece[];
  readonly columns: number;
  readonly rows: number;
  /** The pages that carry a line of a piece, row by row from above. */
  readonly tiles: readonly Tile[];
  /** Height of the window, which a roll shortens to what it needs, mm. */
  readonly windowHeightMm: number;
}

/** Free paper around every piece: room for half a line and for the numbers at its stations, mm. */
const ROOM_MM = 7;

/**
 * The pieces on as few pages as a simple rule finds: largest first, each where it adds the fewest pages to a
 * layout that is there already (shelf by shelf, turned by 90° where that saves pages), else on a layout of its
 * own. Deterministic: ties go to the lower place, then to the left.
 */
export function layOutTemplates(pieces: readonly Piece[], window: PageWindow): readonly TemplateLayout[] {
  const drafts: Draft[] = [];
  const inOrder = pieces.map(pieceBox).sort((a, b) => largest(b) - largest(a));
  for (const boxed of inOrder) {
    const alone = turns(boxed)
      .map((turn) => ({ turn, draft: draftFor(turn, window) }))
      .sort((a, b) => pagesOf(a.draft) - pagesOf(b.draft) || heightOf(a.turn.box) - heightOf(b.turn.box));
    const own = at(alone, 0);
    const spot = bestSpot(boxed, drafts, window);
    if (spot !== undefined && spot.newPages < pagesOf(own.draft)) {
      drafts[spot.index] = addTo(at(drafts, spot.index), spot.spot, window);
    } else {
      drafts.push(addTo(own.draft, spotAlone(own.turn, own.draft, window), window));
    }
  }
  return drafts.map((draft, i) => finish(draft, i + 1, window));
}

/** Where a piece lies on pages of its own; a rib so that it crosses the fewest of them. */
function spotAlone(turn: Turn, draft: Draft, window: PageWindow): Spot {
  const spot: Spot = { turn, left: ROOM_MM, bottom: ROOM_MM };
  if (turn.piece.stuff !== "board") return spot;
  const { right, up } = fewestTiles(
    turn.piece.lines.map((line) => placeMark(line, placingAt(spot))).filter((mark) => mark.kind === "line"),
    Array.from({ length: draft.rows * draft.columns }, (_, i) =>
      windowBox(i % draft.columns, Math.floor(i / draft.columns), window),
    ),
    spareBeside(turn.box, growBox(extent(draft, window), -ROOM_MM)),
  );
  return { turn, left: ROOM_MM + right, bottom: ROOM_MM + up };
}

interface BoxedPiece {
  readonly piece: Piece;
  readonly box: Box;
}

const pieceBox = (piece: Piece): BoxedPiece => ({ piece, box: boxOf(piece.lines.flatMap((l) => l.points)) });
const largest = ({ box }: BoxedPiece): number => Math.max(widthOf(box), heightOf(box));

/** A piece as it lies, or turned by a quarter; the box is that of the turned piece before it is moved. */
interface Turn {
  readonly piece: Piece;
  readonly quarterTurned: boolean;
  readonly box: Box;
}

const turns = ({ piece, box }: BoxedPiece): readonly Turn[] => [
  { piece, quarterTurned: false, box },
  {
    piece,
    quarterTurned: true,
    box: { left: -box.top, right: -box.bottom, bottom: box.left, top: box.right },
  },
];

interface Draft {
  readonly columns: number;
  readonly rows: number;
  readonly pieces: readonly PlacedPiece[];
  /** Pages that the boxes of its pieces touch. */
  readonly touched: ReadonlySet<number>;
}

interface Spot {
  readonly turn: Turn;
  readonly left: number;
  readonly bottom: number;
}

/** An empty layout large enough for one piece. */
function draftFor(turn: Turn, window: PageWindow): Draft {
  const count = (sizeMm: number, windowMm: number) =>
    Math.max(1, Math.ceil((sizeMm + 2 * ROOM_MM - window.overlapMm) / (windowMm - window.overlapMm) - 1e-9));
  return {
    columns: count(widthOf(turn.box), window.widthMm),
    rows: count(heightOf(turn.box), window.heightMm),
    pieces: [],
    touched: new Set(),
  };
}

const pagesOf = (draft: Draft): number => draft.columns * draft.rows;

const stepX = (window: PageWindow): number => window.widthMm - window.overlapMm;
const stepY = (window: PageWindow): number => window.heightMm - window.overlapMm;

function extent(draft: Draft, window: PageWindow): Box {
  return {
    left: 0,
    bottom: 0,
    right: draft.columns * stepX(window) + window.overlapMm,
    top: draft.rows * stepY(window) + window.overlapMm,
  };
}

/** Pages, counted from the lower left row by row, whose window a box touches. */
function touchedPages(box: Box, draft: Draft, window: PageWindow): number[] {
  const pages: number[] = [];
  for (let row = 0; row < draft.rows; row++) {
    for (let column = 0; column < draft.columns; column++) {
      if (boxesOverlap(box, windowBox(column, row, window))) pages.push(row * draft.columns + column);
    }
  }
  return pages;
}

const windowBox = (column: number, rowFromBelow: number, window: PageWindow): Box => ({
  left: column * stepX(window),
  bottom: rowFromBelow * stepY(window),
  right: column * stepX(window) + window.widthMm,
  top: rowFromBelow * stepY(window) + window.heightMm,
});

interface Candidate {
  readonly index: number;
  readonly spot: Spot;
  readonly newPages: number;
  readonly top: number;
}

function bestSpot(boxed: BoxedPiece, drafts: readonly Draft[], window: PageWindow): Candidate | undefined {
  const candidates = drafts.flatMap((draft, index) =>
    turns(boxed).flatMap((turn) => spotsIn(draft, turn, window).map((spot) => ({ index, draft, spot }))),
  );
  return candidates
    .map(({ index, draft, spot }) => {
      const box = boxAt(spot);
      const pages = touchedPages(box, draft, window);
      return { index, spot, newPages: pages.filter((p) => !draft.touched.has(p)).length, top: box.top };
    })
    .sort(
      (a, b) => a.newPages - b.newPages || a.index - b.index || a.top - b.top || a.spot.left - b.spot.left,
    )[0];
}

const boxAt = ({ turn, left, bottom }: Spot): Box => ({
  left,
  bottom,
  right: left + widthOf(turn.box),
  top: bottom + heightOf(turn.box),
});

/** Free places beside and above the pieces that lie there already. */
function spotsIn(draft: Draft, turn: Turn, window: PageWindow): readonly Spot[] {
  const lefts = [ROOM_MM, ...draft.pieces.map((placed) => placed.box.right + ROOM_MM)];
  const bottoms = [ROOM_MM, ...draft.pieces.map((placed) => placed.box.top + ROOM_MM)];
  const room = growBox(extent(draft, window), -ROOM_MM);
  return lefts
    .flatMap((left) => bottoms.map((bottom) => ({ turn, left, bottom })))
    .filter((spot) => {
      const box = boxAt(spot);
      if (box.right > room.right + 1e-9 || box.top > room.top + 1e-9) return false;
      const wide = growBox(box, ROOM_MM - 1e-6);
      return !draft.pieces.some((placed) => boxesOverlap(wide, placed.box));
    });
}

const placingAt = ({ turn, left, bottom }: Spot): Placing => ({
  quarterTurned: turn.quarterTurned,
  scaleX: 1,
  scaleY: 1,
  move: paper(left - turn.box.left, bottom - turn.box.bottom),
});

function addTo(draft: Draft, spot: Spot, window: PageWindow): Draft {
  const { turn } = spot;
  const placing = placingAt(spot);
  const put = (line: LineMark): LineMark => ({
    ...line,
    points: line.points.map((p) => placePoint(p, placing)),
  });
  const { piece } = turn;
  const lines = piece.lines.map(put);
  const needed = piece.needed?.map(put) ?? lines;
  const placed: PlacedPiece = { piece, placing, box: boxAt(spot), lines, needed, hasGaps: false };
  const touched = new Set([...draft.touched, ...touchedPages(placed.box, draft, window)]);
  return { ...draft, pieces: [...draft.pieces, placed], touched };
}

function finish(draft: Draft, number: number, window: PageWindow): TemplateLayout {
  const lines = draft.pieces.flatMap((placed) =>
    placed.needed.map((line) => ({ line, box: boxOf(line.points) })),
  );
  const tiles: Tile[] = [];
  const leftOut: Box[] = [];
  for (let row = 0; row < draft.rows; row++) {
    for (let column = 0; column < draft.columns; column++) {
      const box = windowBox(column, draft.rows - 1 - row, window);
      if (!lines.some((one) => touches(one.box, box) && clipLine(one.line, box).length > 0)) {
        leftOut.push(box);
        continue;
      }
      tiles.push({ name: tileName(row, column), row, column, origin: paper(box.left, box.bottom) });
    }
  }
  const top = Math.max(...draft.pieces.map((placed) => placed.box.top)) + ROOM_MM;
  const isShortened = window.cutToLength && draft.rows === 1;
  const windowHeightMm = isShortened ? Math.max(leastWindowHeight(window), top) : window.heightMm;
  const pieces = draft.pieces.map((placed) => ({ ...placed, hasGaps: isOnAny(placed, leftOut) }));
  return { number, pieces, columns: draft.columns, rows: draft.rows, tiles, windowHeightMm };
}

/** Whether a piece of which not all is needed has lines on any of these pages. */
const isOnAny = (placed: PlacedPiece, pages: readonly Box[]): boolean =>
  placed.needed !== placed.lines &&
  placed.lines.some((line) => pages.some((page) => clipLine(line, page).length > 0));

/** Boxes of straight lines have no width, so touching counts. */
const touches = (a: Box, b: Box): boolean =>
  a.left <= b.right && b.left <= a.right && a.bottom <= b.top && b.bottom <= a.top;

/** `B3`: rows are lettered from above, A to Z, AA …; columns are numbered from the left. */
export function tileName(row: number, column: number): string {
  const letter = String.fromCharCode(65 + (row % 26));
  const prefix = row < 26 ? "" : String.fromCharCode(64 + Math.floor(row / 26));
  return `${prefix}${letter}${column + 1}`;
}
