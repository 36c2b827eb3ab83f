import { type Curve, frameOnPiece } from "../curves/index.ts";

/** The direction of travel in which a curve comes into a node, or leaves it, rad; undefined where no piece does. */
export function directionAtNode(curve: Curve, nodeId: string, side: "in" | "out"): number | undefined {
  const piece = curve.pieces.find((one) => (side === "in" ? one.endNodeId : one.startNodeId) === nodeId);
  if (!piece) return undefined;
  const [x, y] = frameOnPiece(piece, side === "in" ? 1 : 0).tangent;
  return Math.atan2(y, x);
}
