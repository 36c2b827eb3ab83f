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
  let x = 0;
  let y = 0;
  let z = 0;
  let tx = 0;
  let ty = 0;
  let tz = 0;
  let kx = 0;
  let ky = 0;
  let kz = 0;
  for (let power = DEGREE; power >= 0; power--) {
    kx = kx * w + tx;
    ky = ky * w + ty;
    kz = kz * w + tz;
    tx = tx * w + x;
    ty = ty * w + y;
    tz = tz * w + z;
    x = x * w + (c[power] ?? 0);
    y = y * w + (c[DEGREE + 1 + power] ?? 0);
    z = z * w + (c[2 * DEGREE + 2 + power] ?? 0);
  }
  const twice = 2 * rate * rate;
  out[offset] = x;
  out[offset + 1] = y;
  out[offset + 2] = z;
  out[offset + 3] = tx * rate;
  out[offset + 4] = ty * rate;
  out[offset + 5] = tz * rate;
  out[offset + 6] = kx * twice;
  out[offset + 7] = ky * twice;
  out[offset + 8] = kz * twice;
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
