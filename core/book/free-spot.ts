import { type Box, boxesOverlap, boxOf, heightOf, widthOf } from "./boxes.ts";
import { isInsideLoops } from "./chords.ts";
import { clipLine } from "./clip.ts";
import { loopMark, paper } from "./marks.ts";
import type { PaperPoint } from "./types.ts";

const STEPS = 24;

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
  const lines = loops.map((loop) => loopMark(loop, "thin"));
  const middle = paper((whole.left + whole.right) / 2, (whole.bottom + whole.top) / 2);
  return candidates(whole, size)
    .sort((a, b) => distanceTo(a, middle) - distanceTo(b, middle))
    .find(
      (box) =>
        isInsideLoops(paper((box.left + box.right) / 2, (box.bottom + box.top) / 2), loops) &&
        !taken.some((other) => boxesOverlap(box, other)) &&
        lines.every((line) => clipLine(line, box).length === 0),
    );
}

function candidates(whole: Box, size: { readonly widthMm: number; readonly heightMm: number }): Box[] {
  const [roomX, roomY] = [widthOf(whole) - size.widthMm, heightOf(whole) - size.heightMm];
  if (roomX < 0 || roomY < 0) return [];
  const boxes: Box[] = [];
  for (let i = 0; i <= STEPS; i++) {
    for (let j = 0; j <= STEPS; j++) {
      const left = whole.left + (roomX * i) / STEPS;
      const bottom = whole.bottom + (roomY * j) / STEPS;
      boxes.push({ left, bottom, right: left + size.widthMm, top: bottom + size.heightMm });
    }
  }
  return boxes;
}

const distanceTo = (box: Box, point: PaperPoint): number =>
  Math.hypot((box.left + box.right) / 2 - point.x, (box.bottom + box.top) / 2 - point.y);
