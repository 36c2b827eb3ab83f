import { formatNumber } from "../foundation/index.ts";
import { type Box, boxesOverlap, boxHolds, boxOf } from "./boxes.ts";
import { chordsAt } from "./chords.ts";
import { clipLine } from "./clip.ts";
import type { Lettering } from "./lettering.ts";
import { type LineMark, lineMark, type Placing, paper, placePoint, textMark } from "./marks.ts";
import type { PlacedPiece } from "./template-layouts.ts";
import type { Mark, PaperPoint } from "./types.ts";

const ARM_MM = 4;
/** Crosses stand at whole multiples of this from where places on the piece are told, mm. */
const GRID_MM = 10;
/** Two crosses turn a page right only where they stand apart, mm. */
const APART_MM = 60;

/** What a page offers for crosses: its free window, what is taken there, and the lines that no figure may cross. */
export interface PageRoom {
  readonly inner: Box;
  readonly taken: readonly Box[];
  readonly lines: readonly LineMark[];
  readonly lettering: Lettering;
}

/**
 * Two crosses on a page, as far apart as it allows, each with its place on the piece in figures: a page whose neighbours are
 * left out is laid by them on places marked with tape and square. In the frame of the layout; fewer where there is no room.
 */
export function setOutCrosses(placed: PlacedPiece, room: PageRoom): readonly Mark[] {
  const spots = spotsOf(placed, room.inner);
  const first = firstFree(spots, room);
  if (first === undefined) return [];
  const far = [...spots]
    .reverse()
    .filter(({ at }) => Math.hypot(at.x - first.spot.at.x, at.y - first.spot.at.y) >= APART_MM);
  const second = firstFree(far, { ...room, taken: [...room.taken, first.box] });
  return [first, ...(second === undefined ? [] : [second])].flatMap(({ spot: { at, words }, turnRad }) => [
    lineMark([paper(at.x - ARM_MM, at.y), paper(at.x + ARM_MM, at.y)], "thin", "set-out"),
    lineMark([paper(at.x, at.y - ARM_MM), paper(at.x, at.y + ARM_MM)], "thin", "set-out"),
    textMark(turnRad === 0 ? paper(at.x + 1, at.y + 1.4) : paper(at.x - 1.4, at.y + 1), words, {
      face: "mono",
      turnRad,
      layer: "set-out",
    }),
  ]);
}

interface FreeSpot {
  readonly spot: Spot;
  readonly turnRad: number;
  readonly box: Box;
}

/** The first place whose words find room beside it, level or upright. */
function firstFree(spots: readonly Spot[], room: PageRoom): FreeSpot | undefined {
  for (const spot of spots) {
    for (const turnRad of [0, Math.PI / 2]) {
      const box = labelBox(spot, turnRad, room.lettering);
      if (isFree(box, room)) return { spot, turnRad, box };
    }
  }
  return undefined;
}

interface Spot {
  readonly at: PaperPoint;
  readonly words: string;
}

/** Places of the grid on the piece inside the free window, from its lower left corner to its upper right. */
function spotsOf({ piece, placing }: PlacedPiece, inner: Box): readonly Spot[] {
  const { origin, along, across } = piece.setOut;
  const window = boxOf(
    [paper(inner.left, inner.bottom), paper(inner.right, inner.top)].map((p) => unplaced(p, placing)),
  );
  const whole = boxOf(piece.loops.flat());
  const steps = (from: number, to: number, start: number): readonly number[] => {
    const [first, last] = [Math.ceil((from - start) / GRID_MM), Math.floor((to - start) / GRID_MM)];
    return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => (first + i) * GRID_MM);
  };
  const us = steps(Math.max(window.left, whole.left), Math.min(window.right, whole.right), origin.x);
  const vs = steps(Math.max(window.bottom, whole.bottom), Math.min(window.top, whole.top), origin.y);
  return us
    .flatMap((u) => {
      const chords = chordsAt(piece.loops, origin.x + u);
      const isInside = (y: number) => chords.some(([low, high]) => low <= y && y < high);
      return vs.filter((v) => isInside(origin.y + v)).map((v) => ({ u, v }));
    })
    .map(({ u, v }) => ({
      at: placePoint(paper(origin.x + u, origin.y + v), placing),
      words: `${along} ${formatNumber(u, 0)}, ${across} ${formatNumber(v, 0)}`,
    }))
    .sort((a, b) => a.at.x + a.at.y - b.at.x - b.at.y || a.at.x - b.at.x);
}

/** A cross with its words. */
function labelBox({ at, words }: Spot, turnRad: number, lettering: Lettering): Box {
  const longMm = 2 + lettering.widthMm(words, "mono", 2.5);
  const [right, top] = turnRad === 0 ? [longMm, ARM_MM + 0.6] : [ARM_MM, longMm];
  return { left: at.x - ARM_MM - 0.6, right: at.x + right, bottom: at.y - ARM_MM, top: at.y + top };
}

const isFree = (box: Box, { inner, taken, lines }: PageRoom): boolean =>
  boxHolds(inner, box) &&
  !taken.some((other) => boxesOverlap(box, other)) &&
  lines.every((line) => clipLine(line, box).length === 0);

/** A point of the layout in the frame of the piece. */
function unplaced(p: PaperPoint, { move, quarterTurned }: Placing): PaperPoint {
  const [x, y] = [p.x - move.x, p.y - move.y];
  return quarterTurned ? paper(y, -x) : paper(x, y);
}
