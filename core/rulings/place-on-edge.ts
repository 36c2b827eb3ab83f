import type { SpacePoint } from "../foundation/index.ts";
import { type CornerSide, EDGE_NUMBERS, evaluateEdge } from "./evaluate-edge.ts";
import type { EdgePlace, SpaceEdge } from "./types.ts";

/** An edge at a length from its start (kept within its ends), on the stated side of a corner. */
export function placeOnEdge(edge: SpaceEdge, lengthMm: number, side: CornerSide = "after"): EdgePlace {
  const room = new Float64Array(EDGE_NUMBERS);
  evaluateEdge(edge, Math.min(edge.lengthMm, Math.max(0, lengthMm)), side, room);
  return { point: spacePoint(room, 0), tangent: spacePoint(room, 3), curvature: spacePoint(room, 6) };
}

const spacePoint = (numbers: Float64Array, offset: number): SpacePoint => ({
  x: numbers[offset] ?? 0,
  y: numbers[offset + 1] ?? 0,
  z: numbers[offset + 2] ?? 0,
});
