import type { SpacePoint } from "../foundation/index.ts";
import { compileEdge } from "./compile-edge.ts";
import type { SpaceEdge, SpacePiece } from "./types.ts";

/** The edge that joins points by straight lines. */
export function straightEdge(points: readonly SpacePoint[]): SpaceEdge {
  return compileEdge(points.slice(1).map((to, index) => straightPiece(points[index] ?? to, to)));
}

/** The edge that a smooth function of [0, 1] runs along, its velocity given beside it. */
export const edgeOfFunction = (
  pointAt: (t: number) => SpacePoint,
  velocityAt: (t: number) => SpacePoint,
): SpaceEdge => compileEdge([{ pointAt, velocityAt }]);

/** The straight piece between two points. */
export function straightPiece(from: SpacePoint, to: SpacePoint): SpacePiece {
  const velocity = { x: to.x - from.x, y: to.y - from.y, z: to.z - from.z };
  return {
    pointAt: (t) => ({ x: from.x + velocity.x * t, y: from.y + velocity.y * t, z: from.z + velocity.z * t }),
    velocityAt: () => velocity,
  };
}
