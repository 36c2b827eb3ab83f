import type { Vec2 } from "../../core/foundation/index.ts";
import { labelSpot } from "./draw-line.ts";
import { extentOf } from "./extents.ts";
import type { Extent } from "./viewport.ts";

/** Shares of the length at which a label is tried, the middle first. */
const SHARES = [0.5, 0.25, 0.75, 0.12, 0.88];

/** A spot for the label of a closed line that lies outside the boxes of others drawn on it; else its middle. */
export function clearSpot(points: readonly Vec2[], others: readonly (readonly Vec2[])[]): Vec2 {
  const middle = labelSpot(points);
  const extent = extentOf(points);
  const boxes = others.flatMap((other) => extentOf(other) ?? []);
  if (!extent || boxes.length === 0) return middle;
  const tried = SHARES.map((share): Vec2 => {
    const x = extent.left + share * (extent.right - extent.left);
    return [share === 0.5 ? middle[0] : x, share === 0.5 ? middle[1] : middleAt(points, x, middle[1])];
  });
  return tried.find((spot) => !boxes.some((box) => isIn(spot, box))) ?? middle;
}

const isIn = ([x, y]: Vec2, box: Extent): boolean =>
  x >= box.left && x <= box.right && y >= box.bottom && y <= box.top;

/** Half way up a closed line at x. */
function middleAt(points: readonly Vec2[], x: number, otherwise: number): number {
  const ys = points.flatMap((from, index): readonly number[] => {
    const to = points[(index + 1) % points.length] ?? from;
    if (from[0] > x === to[0] > x) return [];
    return [from[1] + ((x - from[0]) / (to[0] - from[0])) * (to[1] - from[1])];
  });
  return ys.length === 2 ? ((ys[0] ?? 0) + (ys[1] ?? 0)) / 2 : otherwise;
}
