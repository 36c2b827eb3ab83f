import { at } from "../foundation/index.ts";
import type { Box } from "./boxes.ts";
import { boxesOverlap, boxOf } from "./boxes.ts";
import { findFreeSpot } from "./free-spot.ts";
import type { Lettering } from "./lettering.ts";
import { arrowMarks, paper, placeMark, textMark } from "./marks.ts";
import type { Piece } from "./piece.ts";
import type { Mark, PaperPoint } from "./types.ts";

/** Sizes tried one after the other, code and notes, mm. */
const SIZES: readonly (readonly [number, number])[] = [
  [10, 5],
  [7, 3.5],
  [5, 2.5],
  [3.5, 2.5],
  [2.5, 2.5],
];

/**
 * The code, large, its notes below and the arrow; level, else turned by a quarter on a piece that is narrow and high;
 * where they do not fit, the first of the notes alone; and where nothing fits, that in small letters over the middle.
 */
export function mainLabel(
  piece: Piece,
  notes: readonly string[],
  context: {
    readonly taken: readonly Box[];
    /** Words that it never covers, where it finds no room clear of all that is taken. */
    readonly words?: readonly Box[];
    readonly lettering: Lettering;
  },
): readonly Mark[] {
  const whole = boxOf(piece.loops.flat());
  const isHigh = whole.top - whole.bottom > whole.right - whole.left;
  const blocksOf = (words: readonly string[], [code, note]: readonly [number, number]) => {
    const level = labelBlock(piece, words, { code, note }, context.lettering);
    return isHigh ? [level, turnedBlock(piece, words, { code, note }, context.lettering)] : [level];
  };
  const [face = ""] = notes;
  const blocks = [
    ...SIZES.flatMap((size) => blocksOf(notes, size)),
    ...SIZES.flatMap((size) => blocksOf([face], size)),
  ];
  for (const block of blocks) {
    const spot = findFreeSpot(block, piece.loops, context.taken);
    if (spot !== undefined) return block.draw(paper(spot.left, spot.bottom));
  }
  return blocks.slice(-1).flatMap((block) => {
    const spots = SLIDES.map((share) =>
      paper(
        whole.left + (whole.right - whole.left - block.widthMm) * (isHigh ? 0.5 : share),
        whole.bottom + (whole.top - whole.bottom - block.heightMm) * (isHigh ? share : 0.5),
      ),
    );
    const isOff =
      (boxes: readonly Box[]) =>
      ({ x, y }: PaperPoint) => {
        const box = { left: x, right: x + block.widthMm, bottom: y, top: y + block.heightMm };
        return !boxes.some((other) => boxesOverlap(box, other));
      };
    return block.draw(
      spots.find(isOff(context.taken)) ?? spots.find(isOff(context.words ?? [])) ?? at(spots, 0),
    );
  });
}

/** Along a piece too narrow for its code, where it may lie over the edges, best first. */
const SLIDES = [
  0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9, 0, 1, 0.05, 0.15, 0.25, 0.35, 0.45, 0.55, 0.65, 0.75, 0.85,
  0.95,
];

/** The same block read from the right-hand side; its arrows still point as they do on the piece. */
function turnedBlock(
  piece: Piece,
  notes: readonly string[],
  size: { readonly code: number; readonly note: number },
  lettering: Lettering,
): LabelBlock {
  const quarter = Math.PI / 2;
  const { arrow, centreTurnRad } = piece;
  const beforeTurning = {
    ...piece,
    arrow: { ...arrow, turnRad: arrow.turnRad - quarter },
    ...(centreTurnRad !== undefined && { centreTurnRad: centreTurnRad - quarter }),
  };
  const level = labelBlock(beforeTurning, notes, size, lettering);
  return {
    widthMm: level.heightMm,
    heightMm: level.widthMm,
    draw: ({ x, y }) => {
      const placing = { quarterTurned: true, scaleX: 1, scaleY: 1, move: paper(x + level.heightMm, y) };
      return level.draw(paper(0, 0)).map((mark) => placeMark(mark, placing));
    },
  };
}

interface LabelBlock {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly draw: (corner: PaperPoint) => readonly Mark[];
}

function labelBlock(
  piece: Piece,
  notes: readonly string[],
  size: { readonly code: number; readonly note: number },
  lettering: Lettering,
): LabelBlock {
  const { code, note } = size;
  // On the narrowest pieces the arrow is short too.
  const arrowMm = (code > note ? 6 : 3) * note;
  const isLevel = piece.arrow.word === "forward";
  const codeWidth = lettering.widthMm(piece.id, "mono", code);
  const wordWidth = lettering.widthMm(piece.arrow.word, "bold", note);
  const centreWidth =
    piece.centreTurnRad === undefined ? 0 : 4 * note + lettering.widthMm(CENTRE_WORDS, "sans", note);
  const arrowWidth = 2 * note + (isLevel ? arrowMm : note) + wordWidth + centreWidth;
  const noteWidths = notes.map((text) => lettering.widthMm(text, "sans", note));
  const widthMm = Math.max(codeWidth + 2 * note + arrowWidth, ...noteWidths) + note;
  const lineMm = 1.7 * note;
  const heightMm = notes.length * lineMm + Math.max(code, arrowReach(piece, note, arrowMm)) + note;
  const draw = (corner: PaperPoint): readonly Mark[] => {
    const base = corner.y + notes.length * lineMm + note / 2;
    const arrowLeft = corner.x + codeWidth + 2 * note;
    return [
      textMark(paper(corner.x, base), piece.id, { heightMm: code, face: "mono", layer: "words" }),
      ...forwardArrow(piece, paper(arrowLeft, base), { note, arrowMm }),
      ...centreArrow(piece, paper(arrowLeft + arrowMm + 3 * note + wordWidth, base), { note, code }),
      ...notes.map((text, i) =>
        textMark(paper(corner.x, corner.y + (notes.length - 1 - i) * lineMm + note / 2), text, {
          heightMm: note,
          layer: "words",
        }),
      ),
    ];
  };
  return { widthMm, heightMm, draw };
}

const CENTRE_WORDS = "centre line";

/** Toward the centre line of the car, beside a right or left part. */
function centreArrow(
  piece: Piece,
  from: PaperPoint,
  size: { readonly note: number; readonly code: number },
): readonly Mark[] {
  if (piece.centreTurnRad === undefined) return [];
  const { note, code } = size;
  return [
    ...turnedArrow(paper(from.x, from.y + code / 2), piece.centreTurnRad, { lengthMm: code, headMm: note }),
    textMark(paper(from.x + note, from.y), CENTRE_WORDS, { heightMm: note, layer: "words" }),
  ];
}

function forwardArrow(
  piece: Piece,
  from: PaperPoint,
  size: { readonly note: number; readonly arrowMm: number },
): readonly Mark[] {
  const { note, arrowMm } = size;
  const word = (x: number) =>
    textMark(paper(x, from.y), piece.arrow.word, { heightMm: note, face: "bold", layer: "words" });
  const { turnRad } = piece.arrow;
  if (piece.arrow.word === "up") {
    const x = from.x + note / 2;
    return [
      ...turnedArrow(paper(x, from.y + arrowMm / 2), turnRad, { lengthMm: arrowMm, headMm: note }),
      word(x + note),
    ];
  }
  const middle = paper(from.x + arrowMm / 2, from.y + arrowReach(piece, note, arrowMm) / 2);
  return [
    ...turnedArrow(middle, turnRad, { lengthMm: arrowMm, headMm: note }),
    word(from.x + arrowMm + note),
  ];
}

/** Room that the arrow takes upward: a letter's height where it is level, more the more it turns. */
const arrowReach = (piece: Piece, note: number, arrowMm: number): number =>
  Math.max(note, arrowMm * Math.abs(Math.sin(piece.arrow.turnRad)));

function turnedArrow(
  middle: PaperPoint,
  turnRad: number,
  size: { readonly lengthMm: number; readonly headMm: number },
): readonly Mark[] {
  const [dx, dy] = [(Math.cos(turnRad) * size.lengthMm) / 2, (Math.sin(turnRad) * size.lengthMm) / 2];
  return arrowMarks(
    paper(middle.x - dx, middle.y - dy),
    paper(middle.x + dx, middle.y + dy),
    size.headMm,
    "thin",
  );
}
