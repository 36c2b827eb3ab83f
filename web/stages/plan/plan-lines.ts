import type { SpaceShape } from "../../../core/book/index.ts";
import type { SpacePoint } from "../../../core/foundation/index.ts";
import { type Bounds, boundsOf, pathOf, type Scale, type Spot } from "../../drawings/index.ts";

/** A line of a shape seen from above. */
export interface PlanLineSeen {
  readonly spots: readonly Spot[];
  readonly end: "open" | "closed";
}

/** A shape from above: the loops of a sheet that lies, or the one line that an upright fence shows. */
export function planLines(shape: SpaceShape): readonly PlanLineSeen[] {
  if (shape.kind !== "fence")
    return shape.loops.map((loop) => ({ spots: loop.map(fromAbove), end: "closed" }));
  const line = (shape.loops[0] ?? []).map(fromAbove).sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  return [{ spots: line, end: "open" }];
}

/** The SVG path of a shape from above. */
export const planPath = (shape: SpaceShape, scale: Scale): string =>
  planLines(shape)
    .map(({ spots, end }) => pathOf(spots, scale, end))
    .join("");

/** The box around shapes from above; undefined for none. */
export const planBounds = (shapes: readonly SpaceShape[]): Bounds | undefined =>
  boundsOf(shapes.flatMap((shape) => shape.loops.flat().map(fromAbove)));

/** Points of two strips nearer than this are the two sides of one cut. */
const SAME_CUT_MM = 2;

/** The straight cut that two strips share, from above; empty where they share none. */
export function sharedLine(one: SpaceShape, other: SpaceShape): readonly Spot[] {
  const others = other.loops.flat().map(fromAbove);
  const isShared = ([x, y]: Spot) =>
    others.some((spot) => Math.hypot(spot[0] - x, spot[1] - y) < SAME_CUT_MM);
  return one.loops
    .flat()
    .map(fromAbove)
    .filter(isShared)
    .sort((a, b) => a[1] - b[1] || a[0] - b[0]);
}

const fromAbove = ({ x, y }: SpacePoint): Spot => [x, y];
