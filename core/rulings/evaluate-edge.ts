import type { SpaceEdge } from "./types.ts";

/** Numbers that `evaluateEdge` writes: point, unit tangent, change of the tangent by length; x, y, z each. */
export const EDGE_NUMBERS = 9;

/** Which side of a corner. */
export type CornerSide = "before" | "after";

/** Lengths this near to a border are on the side that is asked for, whatever rounding did to them. */
const BORDER_MM = 1e-7;
/** Powers in a span, and places of one coordinate's coefficients. */
const DEGREE = 8;

/**
 * Writes an edge at a length from its start into `out` from `offset` on: the inmost step of the pairing, so it makes
 * no objects. Zero tangent where the edge is a point.
 */
export function evaluateEdge(
  edge: SpaceEdge,
  lengthMm: number,
  side: CornerSide,
  out: Float64Array,
  offset = 0,
): void {
  const span = edge.spans[spanIndexAt(edge, side === "after" ? lengthMm + BORDER_MM : lengthMm - BORDER_MM)];
  if (span === undefined) {
    const { x, y, z } = edge.start;
    out.fill(0, offset, offset + EDGE_NUMBERS);
    out[offset] = x;
    out[offset + 1] = y;
    out[offset + 2] = z;
    return;
  }
  const rate = 2 / span.lengthMm;
  const w = (lengthMm - span.startMm) * rate - 1;
  const c = span.coefficients;
  for (let axis = 0; axis < 3; axis++) {
    const first = axis * (DEGREE + 1);
    let [value, slope, bend] = [0, 0, 0];
    for (let k = first + DEGREE; k >= first; k--) {
      bend = bend * w + slope;
      slope = slope * w + value;
      value = value * w + (c[k] ?? 0);
    }
    out[offset + axis] = value;
    out[offset + 3 + axis] = slope * rate;
    out[offset + 6 + axis] = 2 * bend * rate * rate;
  }
}

/** The span that a length lies on; the first or last beyond the ends. */
function spanIndexAt({ spans }: SpaceEdge, lengthMm: number): number {
  let low = 0;
  let high = spans.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((spans[middle]?.startMm ?? 0) <= lengthMm) low = middle;
    else high = middle - 1;
  }
  return low;
}
