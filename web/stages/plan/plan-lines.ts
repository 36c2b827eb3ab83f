import type { SpaceShape } from "../../../core/book/index.ts";
import type { SpacePoint } from "../../../core/foundation/index.ts";
import { type Bounds, boundsOf, pathOf, type Scale, type Spot } from "../../drawings/index.ts";

/** A line of a shape seen from above. */
export interface PlanLineSeen {
  readonly spots: readonly Spot[];
  readonly end: "open" | "closed";
}

/** A shape from above: the loops of a sheet, or the one line that an upright fence shows. */
export function planLines(shape: SpaceShape): readonly PlanLineSeen[] {
  if (shape.kind === "section")
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

const fromAbove = ({ x, y }: SpacePoint): Spot => [x, y];
