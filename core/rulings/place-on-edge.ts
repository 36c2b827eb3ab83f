import { type CornerSide, EDGE_NUMBERS, evaluateEdge } from "./evaluate-edge.ts";
import type { EdgePlace, SpaceEdge } from "./types.ts";

/** An edge at a length from its start (kept within its ends), on the stated side of a corner. */
export function placeOnEdge(edge: SpaceEdge, lengthMm: number, side: CornerSide = "after"): EdgePlace {
  const out = new Float64Array(EDGE_NUMBERS);
  evaluateEdge(edge, Math.min(edge.lengthMm, Math.max(0, lengthMm)), side, out);
  const [x = 0, y = 0, z = 0, tx = 0, ty = 0, tz = 0, kx = 0, ky = 0, kz = 0] = out;
  return { point: { x, y, z }, tangent: { x: tx, y: ty, z: tz }, curvature: { x: kx, y: ky, z: kz } };
}
