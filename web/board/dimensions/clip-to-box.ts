import type { Vec2 } from "../../../core/foundation/index.ts";
import type { Box } from "../viewport.ts";

/** The part of a straight line that lies in a box, px; undefined where none does (Liang and Barsky 1984; from memory). */
export function clipToBox(from: Vec2, to: Vec2, box: Box): readonly [Vec2, Vec2] | undefined {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const edges: readonly (readonly [number, number])[] = [
    [-dx, from[0] - box.leftPx],
    [dx, box.leftPx + box.widthPx - from[0]],
    [-dy, from[1] - box.topPx],
    [dy, box.topPx + box.heightPx - from[1]],
  ];
  let [start, end] = [0, 1];
  for (const [run, room] of edges) {
    if (run === 0 && room < 0) return undefined;
    if (run < 0) start = Math.max(start, room / run);
    if (run > 0) end = Math.min(end, room / run);
  }
  if (start > end) return undefined;
  const at = (t: number): Vec2 => [from[0] + dx * t, from[1] + dy * t];
  return [at(start), at(end)];
}
