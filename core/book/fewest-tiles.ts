import { type Box, boxesOverlap, boxOf, heightOf, widthOf } from "./boxes.ts";
import { clipLine } from "./clip.ts";
import type { LineMark } from "./marks.ts";
import type { PaperPoint } from "./types.ts";

/** Steps over the slack in both directions. */
const STEPS = 5;

/**
 * How far a piece that lies at the lower left of some pages is shifted within what they have to spare, so that its lines lie
 * on the fewest of them: a rib that rises need not touch the corners of a page. No shift where none saves a page.
 */
export function fewestTiles(
  lines: readonly LineMark[],
  windows: readonly Box[],
  spareMm: { readonly right: number; readonly up: number },
): { readonly right: number; readonly up: number } {
  const moved = (right: number, up: number): readonly LineMark[] =>
    lines.map((line) => ({
      ...line,
      points: line.points.map(({ x, y }): PaperPoint => ({ x: x + right, y: y + up })),
    }));
  const pages = (own: readonly LineMark[]): number => {
    const boxed = own.map((line) => ({ line, box: boxOf(line.points) }));
    return windows.filter((window) =>
      boxed.some(({ line, box }) => boxesOverlap(box, window) && clipLine(line, window).length > 0),
    ).length;
  };
  let best = { right: 0, up: 0, count: pages(lines) };
  for (let i = 0; i <= STEPS; i++)
    for (let k = 0; k <= STEPS; k++) {
      const [right, up] = [(spareMm.right * i) / STEPS, (spareMm.up * k) / STEPS];
      const count = pages(moved(right, up));
      if (count < best.count) best = { right, up, count };
    }
  return { right: best.right, up: best.up };
}

/** What pages of a size have to spare beside a box, mm; none where it just fits. */
export const spareBeside = (box: Box, room: Box): { readonly right: number; readonly up: number } => ({
  right: Math.max(0, widthOf(room) - widthOf(box)),
  up: Math.max(0, heightOf(room) - heightOf(box)),
});
