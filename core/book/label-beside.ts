import { at } from "../foundation/index.ts";
import { type Box, boxesOverlap, boxHolds, boxOf, widthOf } from "./boxes.ts";
import { chordsAt } from "./chords.ts";
import { clipLine } from "./clip.ts";
import { findFreeSpot } from "./free-spot.ts";
import type { Lettering } from "./lettering.ts";
import { type LineMark, lineMark, paper, textMark } from "./marks.ts";
import type { Mark, PaperPoint } from "./types.ts";

/** A label with the room that it takes. */
export interface Label {
  readonly box: Box;
  readonly marks: readonly Mark[];
}

/** What a label keeps clear of. */
export interface LabelsAround {
  readonly lines: readonly LineMark[];
  readonly labels: readonly Label[];
  /** Where labels may stand; anywhere if it is not said. */
  readonly room?: Box;
  readonly lettering: Lettering;
}

export type Loops = readonly (readonly PaperPoint[])[];

/** The room of one line of small words. */
export const LABEL_LINE_MM = 4;

/** Small words beside what the loops enclose, where nothing is yet, with a thin line that ends in it. */
export function labelBeside(words: string, loops: Loops, around: LabelsAround): Label {
  const feet = feetIn(loops);
  const size = {
    widthMm: around.lettering.widthMm(words, "mono", 2.5) + 1,
    heightMm: LABEL_LINE_MM,
  };
  const { box, foot } = clearPlace(feet, size, around);
  return {
    box,
    marks: [
      textMark(paper(box.left + 0.5, box.bottom + 0.7), words, { face: "mono", layer: "words" }),
      lineMark([nearestOf(box, foot), foot], "thin"),
    ],
  };
}

/** A place for a label and the point that it is led to. */
export interface LedPlace {
  readonly box: Box;
  readonly foot: PaperPoint;
}

/**
 * The nearest place for a box of a size about one of the points, the best first, that touches no line and no label, and from
 * which a line to the point runs through no label; where there is none, one that covers no label, else about the first.
 */
export function clearPlace(
  feet: readonly PaperPoint[],
  size: { readonly widthMm: number; readonly heightMm: number },
  { lines, labels, room }: Omit<LabelsAround, "lettering">,
): LedPlace {
  const leaders = labels.flatMap(({ marks }) => marks.filter((mark) => mark.kind === "line"));
  const isOffLabels = ({ box }: LedPlace) => !labels.some((other) => boxesOverlap(other.box, box));
  const isFree = (place: LedPlace) =>
    (room === undefined || boxHolds(room, place.box)) &&
    isOffLabels(place) &&
    [...lines, ...leaders].every((line) => clipLine(line, place.box).length === 0);
  const isReached = ({ box, foot }: LedPlace) => {
    const leader = lineMark([nearestOf(box, foot), foot], "thin");
    return labels.every((other) => clipLine(leader, other.box).length === 0);
  };
  const isClear = (place: LedPlace) => isFree(place) && isReached(place);
  const about = (spots: (foot: PaperPoint) => readonly PaperPoint[]) =>
    feet.flatMap((foot) => spots(foot).map((p): LedPlace => ({ foot, box: boxAbout(p, size) })));
  const near = about(ringsAbout).find(isClear);
  if (near !== undefined) return near;
  const fine = about(gridAbout);
  const first = at(feet, 0);
  return (
    fine.find(isClear) ??
    fine.find(isFree) ??
    fine.find(isOffLabels) ?? { foot: first, box: boxAbout(first, size) }
  );
}

/** Points on rings about a place, the nearest ring first, upward first. */
const ringsAbout = ({ x, y }: PaperPoint): readonly PaperPoint[] =>
  AWAY_MM.flatMap((away) =>
    Array.from({ length: 24 }, (_, k) => {
      const angle = Math.PI / 2 + ((k % 2 === 0 ? k : -k - 1) * Math.PI) / 24;
      return paper(x + away * Math.cos(angle), y + away * Math.sin(angle));
    }),
  );

/** Points about a place in a fine grid, the nearest first: where the rings find nothing. */
function gridAbout({ x, y }: PaperPoint): readonly PaperPoint[] {
  const steps = Array.from({ length: 2 * GRID_STEPS + 1 }, (_, i) => (i - GRID_STEPS) * GRID_MM);
  return steps
    .flatMap((dx) => steps.map((dy) => ({ dx, dy })))
    .sort((a, b) => Math.hypot(a.dx, a.dy) - Math.hypot(b.dx, b.dy) || a.dx - b.dx || a.dy - b.dy)
    .map(({ dx, dy }) => paper(x + dx, y + dy));
}

const GRID_MM = 1.5;
const GRID_STEPS = 50;
const AWAY_MM = Array.from({ length: 28 }, (_, i) => 5 + 2 * i);

/** The place of a box that is nearest to a point. */
export const nearestOf = (box: Box, { x, y }: PaperPoint): PaperPoint =>
  paper(Math.min(box.right, Math.max(box.left, x)), Math.min(box.top, Math.max(box.bottom, y)));

const boxAbout = (
  { x, y }: PaperPoint,
  size: { readonly widthMm: number; readonly heightMm: number },
): Box => ({
  left: x - size.widthMm / 2,
  right: x + size.widthMm / 2,
  bottom: y - size.heightMm / 2,
  top: y + size.heightMm / 2,
});

/** Places inside the loops that a line may lead to: near their middle, then toward both ends. */
function feetIn(loops: Loops): readonly PaperPoint[] {
  const spot = findFreeSpot({ widthMm: 0.6, heightMm: 0.6 }, loops, []);
  const box = boxOf(loops.flat());
  const middle = spot ?? box;
  const others = SHARES.flatMap((share) => {
    const x = box.left + share * widthOf(box);
    const [low, high] = [...chordsAt(loops, x)].sort((a, b) => b[1] - b[0] - (a[1] - a[0]))[0] ?? [];
    return low === undefined || high === undefined ? [] : [paper(x, (low + high) / 2)];
  });
  return [paper((middle.left + middle.right) / 2, (middle.bottom + middle.top) / 2), ...others];
}

const SHARES = [0.3, 0.7, 0.1, 0.9] as const;
