import { at } from "../foundation/index.ts";
import type { EdgeMark } from "../marking/index.ts";
import { type Box, boxesOverlap, boxOf, textCorners } from "./boxes.ts";
import { clipLine } from "./clip.ts";
import type { Lettering } from "./lettering.ts";
import { type LineMark, paper, type TextMark } from "./marks.ts";
import type { Piece } from "./piece.ts";
import type { PaperPoint } from "./types.ts";

/** Where words go: the piece, its letters, marks on its edges, and boxes in its frame that are to stay free. */
export interface LabelRoom {
  readonly piece: Piece;
  readonly lettering: Lettering;
  readonly avoid: readonly Box[];
  readonly marks: readonly EdgeMark[];
}

/** The boxes around words as printed. */
export const boxesOf = (words: readonly TextMark[], lettering: Lettering): readonly Box[] =>
  words.map((word) => boxOf(textCorners(word, lettering)));

/** Places along a line that are tried for its words. */
export const SHARES = [0.35, 0.5, 0.65, 0.2, 0.8, 0.28, 0.42, 0.58, 0.72];

/** The first of the texts that lies clear of what is to stay free, else the first. */
export function freest(choices: readonly TextMark[], room: LabelRoom): TextMark {
  const clear = choices.find((mark) => {
    const box = boxOf(textCorners(mark, room.lettering));
    return !room.avoid.some((other) => boxesOverlap(box, other));
  });
  return clear ?? at(choices, 0);
}

/**
 * Texts one after the other, each at the first of its places that is clear of all words before it, of the lines to cut by and
 * of what is to stay free; else clear of the words and those lines; else of the words alone; one that finds no such place is left out: the sheet of the piece has it.
 */
export function placeWords(
  wanted: readonly (readonly TextMark[])[],
  words: readonly TextMark[],
  room: LabelRoom,
): readonly TextMark[] {
  const placed: TextMark[] = [];
  const cuts = room.piece.lines.filter(({ style }) => style === "cut");
  const taken = [...boxesOf(words, room.lettering)];
  for (const choices of wanted) {
    const isOff = (boxes: readonly Box[]) => (mark: TextMark) => {
      const box = boxOf(textCorners(mark, room.lettering));
      return !boxes.some((other) => boxesOverlap(box, other));
    };
    const isUncut = (mark: TextMark) => !isStruck(mark, cuts, room.lettering);
    const clear = choices.filter(isOff(taken));
    const mark =
      clear.find((one) => isUncut(one) && isOff(room.avoid)(one)) ?? clear.find(isUncut) ?? clear[0];
    if (mark === undefined) continue;
    placed.push(mark);
    taken.push(...boxesOf([mark], room.lettering));
  }
  return placed;
}

/** Whether one of the lines runs through a text: seen in its own frame, where it stands level. */
export function isStruck(mark: TextMark, lines: readonly LineMark[], lettering: Lettering): boolean {
  const [c, s] = [Math.cos(mark.turnRad), Math.sin(mark.turnRad)];
  const levelled = ({ x, y }: PaperPoint): PaperPoint => paper(x * c + y * s, y * c - x * s);
  const corners = textCorners(mark, lettering);
  const box = boxOf(corners.map(levelled));
  const near = lines.flatMap((line) => clipLine(line, boxOf(corners)));
  return near.some((line) => clipLine({ ...line, points: line.points.map(levelled) }, box).length > 0);
}
