import { add2, distance2, dot2, scale2, subtract2, unit2, type Vec2 } from "../foundation/index.ts";

/** A corner between two straight lines: the node, and a point on the line before and on the line after it. */
export interface StraightCorner {
  readonly before: Vec2;
  readonly at: Vec2;
  readonly after: Vec2;
}

/**
 * The radius whose arc passes the foot of a point on the corner's bisector; 0 outside the corner. With θ between the
 * lines the middle of the arc lies r (1 / sin(θ/2) − 1) from the node, since its centre lies r / sin(θ/2) from it.
 */
export function radiusThrough(corner: StraightCorner, point: Vec2): number {
  const { bisector, halfSine } = bisected(corner);
  const awayMm = dot2(subtract2(point, corner.at), bisector);
  const perRadius = 1 / halfSine - 1;
  return perRadius > 0 ? Math.max(0, awayMm / perRadius) : 0;
}

/** The middle of the arc of a radius: where it meets the bisector. */
export function middleOfCorner(corner: StraightCorner, radiusMm: number): Vec2 {
  const { bisector, halfSine } = bisected(corner);
  return add2(corner.at, scale2(bisector, radiusMm * (1 / halfSine - 1)));
}

/** The largest radius whose arc touches both lines between the node and the points given: r = a tan(θ/2). */
export function largestCornerRadius(corner: StraightCorner): number {
  const { halfSine } = bisected(corner);
  const roomMm = Math.min(distance2(corner.at, corner.before), distance2(corner.at, corner.after));
  return (roomMm * halfSine) / Math.sqrt(Math.max(Number.EPSILON, 1 - halfSine * halfSine));
}

/** The unit direction into the corner, and the sine of half the angle between its lines. */
export function bisected({ before, at, after }: StraightCorner): {
  readonly bisector: Vec2;
  readonly halfSine: number;
} {
  const [back, on] = [unit2(subtract2(before, at)), unit2(subtract2(after, at))];
  const halfSine = Math.sqrt(Math.max(0, (1 - dot2(back, on)) / 2));
  return { bisector: unit2(add2(back, on)), halfSine };
}
