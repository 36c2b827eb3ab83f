import { type Box, boxesOverlap, boxOf, heightOf, widthOf } from "./boxes.ts";
import { isInsideLoops } from "./chords.ts";
import { clipLine } from "./clip.ts";
import { loopMark, paper } from "./marks.ts";
import { thin } from "./thin-points.ts";
import type { PaperPoint } from "./types.ts";

/** Places are tried this far apart, but at most so many each way. */
const STEP_MM = 8;
const MOST_STEPS = 80;
/** The outline is looked at no finer than this. */
const COARSE_MM = 2;

/**
 * The place for a block of words of the given size inside the loops, nearest their middle, that touches no edge
 * and none of the boxes that are taken; undefined where there is none.
 */
export function findFreeSpot(
  size: { readonly widthMm: number; readonly heightMm: number },
  loops: readonly (readonly PaperPoint[])[],
  taken: readonly Box[],
): Box | undefined {
  const whole = boxOf(loops.flat());
  const coarse = loops.map((loop) => thin(loop, COARSE_MM));
  const lines = coarse.map((loop) => loopMark(loop, "thin"));
  const middle = paper((whole.left + whole.right) / 2, (whole.bottom + whole.top) / 2);
  return candidates(whole, size)
    .sort((a, b) => distanceTo(a, middle) - distanceTo(b, middle))
    .find(
      (box) =>
        !taken.some((other) => boxesOverlap(box, other)) &&
        isInsideLoops(paper((box.left + box.right) / 2, (box.bottom + box.top) / 2), coarse) &&
        lines.every((line) => clipLine(line, box).length === 0),
    );
}

function candidates(whole: Box, size: { readonly widthMm: number; readonly heightMm: number }): Box[] {
  const [roomX, roomY] = [widthOf(whole) - size.widthMm, heightOf(whole) - size.heightMm];
  if (roomX < 0 || roomY < 0) return [];
  const boxes: Box[] = [];
  const steps = (roomMm: number) => Math.max(8, Math.min(MOST_STEPS, Math.ceil(roomMm / STEP_MM)));
  const [stepsX, stepsY] = [steps(roomX), steps(roomY)];
  for (let i = 0; i <= stepsX; i++) {
    for (let j = 0; j <= stepsY; j++) {
      const left = whole.left + (roomX * i) / stepsX;
      const bottom = whole.bottom + (roomY * j) / stepsY;
      boxes.push({ left, bottom, right: left + size.widthMm, top: bottom + size.heightMm });
    }
  }
  return boxes;
}

const distanceTo = (box: Box, point: PaperPoint): number =>
  Math.hypot((box.left + box.right) / 2 - point.x, (box.bottom + box.top) / 2 - point.y);
