import { Line } from "react-konva";
import type { SceneEdge } from "../tools/index.ts";
import { linePx, pointsOfEdge } from "./draw-line.ts";
import type { Paint } from "./paint.ts";
import { pens } from "./pens.ts";
import type { Transform } from "./viewport.ts";

/** The chosen edge of the chosen line, drawn over it. */
export function PickedEdge({
  edge,
  transform,
  paint,
}: {
  readonly edge: SceneEdge;
  readonly transform: Transform;
  readonly paint: Paint;
}) {
  return (
    <Line
      points={linePx(transform, pointsOfEdge(edge))}
      stroke={paint.mark}
      strokeWidth={pens.chosen * 2}
      lineCap="round"
    />
  );
}
