import { at, type PlanPoint } from "../foundation/index.ts";
import type { Making } from "../project/index.ts";

/** How far a measured board lies over its level at any point of the plan; 0 where nothing was measured. */
export type BoardHeight = (p: PlanPoint) => number;

/** A point this near to a measured one has its height, mm. */
const AT_POINT_MM = 1e-6;

/**
 * A board between the points at which its height was measured. Where these are a full grid of rows and columns, straight
 * along both (bilinear); else by the weight of the inverse square of the distance (Shepard 1968; from memory). Beyond the
 * outermost points of a grid it goes on level.
 */
export function boardHeight(heights: Making["boardHeights"]): BoardHeight {
  if (heights.length === 0) return () => 0;
  const xs = ascending(heights.map(({ x }) => x));
  const ys = ascending(heights.map(({ y }) => y));
  const grid = xs.map((x) => ys.map((y) => heights.find((one) => one.x === x && one.y === y)?.heightMm));
  const isGrid = grid.every((column) => column.every((heightMm) => heightMm !== undefined));
  if (!isGrid) return (p) => byDistance(heights, p);
  return ({ x, y }) => {
    const [i, shareX] = placeIn(xs, x);
    const [k, shareY] = placeIn(ys, y);
    const corner = (di: number, dk: number): number =>
      at(at(grid, Math.min(i + di, xs.length - 1)), Math.min(k + dk, ys.length - 1)) ?? 0;
    const low = corner(0, 0) + (corner(1, 0) - corner(0, 0)) * shareX;
    const high = corner(0, 1) + (corner(1, 1) - corner(0, 1)) * shareX;
    return low + (high - low) * shareY;
  };
}

const ascending = (values: readonly number[]): number[] => [...new Set(values)].sort((a, b) => a - b);

/** The step of a ladder that holds a value, and the share of the way through it. */
function placeIn(ladder: readonly number[], value: number): readonly [number, number] {
  const next = ladder.findIndex((rung) => rung > value);
  if (next === 0) return [0, 0];
  if (next < 0) return [ladder.length - 1, 0];
  const [low, high] = [at(ladder, next - 1), at(ladder, next)];
  return [next - 1, (value - low) / (high - low)];
}

function byDistance(heights: Making["boardHeights"], p: PlanPoint): number {
  let [sum, weights] = [0, 0];
  for (const { x, y, heightMm } of heights) {
    const squared = (x - p.x) ** 2 + (y - p.y) ** 2;
    if (squared < AT_POINT_MM ** 2) return heightMm;
    sum += heightMm / squared;
    weights += 1 / squared;
  }
  return sum / weights;
}
