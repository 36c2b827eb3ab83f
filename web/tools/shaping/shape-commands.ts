import { largestCornerRadius, radiusThrough } from "../../../core/curves/index.ts";
import { roundTo, subtract2, toDegrees, toRadians, type Vec2 } from "../../../core/foundation/index.ts";
import type { Command } from "../../../core/project/index.ts";
import type { CornerGrip, SegmentGrip, TangentGrip } from "./shape-grips.ts";

/** A hand sets radii in whole millimetres, and directions in whole degrees, unless snaps are held off. */
const RADIUS_STEP_MM = 1;
const TURN_STEP_DEG = 1;
const DECIMALS = 6;

/** Makes the edge straight or curved. */
export const segmentCommand = ({ line, edgeId }: SegmentGrip, next: "line" | "curve"): Command => ({
  kind: "change-node",
  line,
  nodeId: edgeId,
  changes: { next },
});

/** Rounds the corner by a radius, as far as its lines have room; 0 makes it sharp. */
export function radiusCommand({ line, nodeId, corner }: CornerGrip, radiusMm: number): Command {
  const fitting = Math.min(Math.max(0, radiusMm), largestCornerRadius(corner));
  const rounded = Math.floor(fitting * 10 ** DECIMALS) / 10 ** DECIMALS;
  return { kind: "change-node", line, nodeId, changes: { radiusMm: rounded > 0 ? rounded : undefined } };
}

/** The radius that a place pulls the corner to. */
export function pulledRadius(grip: CornerGrip, place: Vec2, snaps: boolean): number {
  const radiusMm = radiusThrough(grip.corner, place);
  return snaps ? Math.round(radiusMm / RADIUS_STEP_MM) * RADIUS_STEP_MM : radiusMm;
}

/** Sets the direction of the curve's end, rad; undefined lets it go where the curve wants. */
export const tangentCommand = (
  { line, nodeId, end }: TangentGrip,
  directionRad: number | undefined,
): Command => ({
  kind: "change-node",
  line,
  nodeId,
  changes: end === "in" ? { tangentInRad: directionRad } : { tangentOutRad: directionRad },
});

/** The direction that a place pulls the end of the curve to: the handle of an arriving curve lies behind the node. */
export function pulledDirection(grip: TangentGrip, place: Vec2, snaps: boolean): number {
  const [x, y] = grip.end === "out" ? subtract2(place, grip.at) : subtract2(grip.at, place);
  const directionRad = Math.atan2(y, x);
  if (!snaps) return directionRad;
  return roundTo(toRadians(Math.round(toDegrees(directionRad) / TURN_STEP_DEG) * TURN_STEP_DEG), 12);
}
