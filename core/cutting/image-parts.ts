import { at } from "../foundation/index.ts";
import type { FlatEdge, Part } from "../patterns/index.ts";

/** Whether a left part is point for point the mirror image of a right one, so that its division is known. */
export function isImage(left: Part, right: Part): boolean {
  if (left.hand !== "left" || right.hand !== "right" || left.sheetId !== right.sheetId) return false;
  return (
    left.loops.length === right.loops.length &&
    left.loops.every(({ edges }, i) => {
      const others = at(right.loops, i).edges.toReversed();
      return edges.length === others.length && edges.every((edge, k) => isEdgeImage(edge, at(others, k)));
    })
  );
}

/** Whether one edge, walked backward, is the image of another about v = 0. */
function isEdgeImage(left: FlatEdge, right: FlatEdge): boolean {
  const last = right.points.length - 1;
  return (
    left.edgeId === right.edgeId &&
    left.points.length === right.points.length &&
    left.points.every(({ u, v }, i) => {
      const other = at(right.points, last - i);
      return u === other.u && v === -other.v;
    })
  );
}
