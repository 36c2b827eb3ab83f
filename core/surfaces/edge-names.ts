import { type Curve, endOfPiece, startOfPiece } from "../curves/index.ts";
import { add2, subtract2, type Vec2 } from "../foundation/index.ts";

/**
 * A name for each drawn edge of a counter-clockwise outline: the builder's own, else the side that it looks to
 * (front, rear, inner, outer), counted where a side has several.
 */
export function edgeNames(
  outline: Curve,
  typed: Readonly<Record<string, string>>,
): Readonly<Record<string, string>> {
  const spans = new Map<string, Vec2>();
  for (const piece of outline.pieces) {
    const span = subtract2(endOfPiece(piece), startOfPiece(piece));
    spans.set(piece.edgeId, add2(spans.get(piece.edgeId) ?? [0, 0], span));
  }
  const counts = new Map<string, number>();
  const names: Record<string, string> = {};
  for (const [edgeId, span] of spans) {
    const own = typed[edgeId];
    if (own !== undefined && own !== "") {
      names[edgeId] = own;
      continue;
    }
    const side = sideOf(span);
    const count = (counts.get(side) ?? 0) + 1;
    counts.set(side, count);
    names[edgeId] = count === 1 ? `${side} edge` : `${side} edge ${count}`;
  }
  return names;
}

/** The side that an edge looks to; its outward normal is its direction turned a quarter clockwise. */
function sideOf([dx, dy]: Vec2): "front" | "rear" | "inner" | "outer" {
  if (Math.abs(dy) > Math.abs(dx)) return dy > 0 ? "rear" : "front";
  return dx > 0 ? "inner" : "outer";
}
