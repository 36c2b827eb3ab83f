import type { FlatPoint, PlanPoint, Vec2 } from "../foundation/index.ts";

/**
 * Axes along a straight edge of the base, from one of its ends: `along` away from that end, `outward` off the base.
 * The flat of the base lies where it is drawn, so u is x and v is y.
 */
export interface EdgeFrame {
  readonly origin: PlanPoint;
  readonly along: PlanPoint;
  readonly outward: PlanPoint;
  readonly lengthMm: number;
}

/** The axes from the start of an edge; the base lies on the left of its direction. */
export function startFrame(from: PlanPoint, to: PlanPoint): EdgeFrame {
  const lengthMm = Math.hypot(to.x - from.x, to.y - from.y);
  const along = { x: (to.x - from.x) / lengthMm, y: (to.y - from.y) / lengthMm };
  return { origin: from, along, outward: { x: along.y, y: -along.x }, lengthMm };
}

/** The axes from the end of an edge, running back. */
export function endFrame(from: PlanPoint, to: PlanPoint): EdgeFrame {
  const { along, outward, lengthMm } = startFrame(from, to);
  return { origin: to, along: { x: -along.x, y: -along.y }, outward, lengthMm };
}

/** Flat point at (along, outward) of a frame. */
export const flatIn = ({ origin, along, outward }: EdgeFrame, [a, b]: Vec2): FlatPoint => ({
  u: origin.x + along.x * a + outward.x * b,
  v: origin.y + along.y * a + outward.y * b,
});

/** (along, outward) of a plan point in a frame. */
export function inFrame({ origin, along, outward }: EdgeFrame, p: PlanPoint): Vec2 {
  const [dx, dy] = [p.x - origin.x, p.y - origin.y];
  return [dx * along.x + dy * along.y, dx * outward.x + dy * outward.y];
}
