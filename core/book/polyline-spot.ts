import { at } from "../foundation/index.ts";
import { paper } from "./marks.ts";
import type { PaperPoint } from "./types.ts";

/** A place on a line: the point, and the direction of travel there. */
export interface LineSpot {
  readonly at: PaperPoint;
  readonly turnRad: number;
}

export function lengthOf(points: readonly PaperPoint[]): number {
  let length = 0;
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [at(points, i - 1), at(points, i)];
    length += Math.hypot(b.x - a.x, b.y - a.y);
  }
  return length;
}

/** The place at a share (0 to 1) of a line's length; the direction is that of the chord around it. */
export function spotOn(points: readonly PaperPoint[], share: number): LineSpot {
  const goal = lengthOf(points) * share;
  let passed = 0;
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [at(points, i - 1), at(points, i)];
    const step = Math.hypot(b.x - a.x, b.y - a.y);
    if (passed + step >= goal && step > 0) {
      const t = (goal - passed) / step;
      return {
        at: paper(a.x + (b.x - a.x) * t, a.y + (b.y - a.y) * t),
        turnRad: Math.atan2(b.y - a.y, b.x - a.x),
      };
    }
    passed += step;
  }
  return { at: at(points, -1), turnRad: 0 };
}
