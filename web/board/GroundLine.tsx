import { Line } from "react-konva";
import type { Paint } from "./paint.ts";
import { pens } from "./pens.ts";
import { type Box, type Transform, toPx } from "./viewport.ts";

/** The ground, z = 0, with the strokes that say so under it. */
export function GroundLine({
  transform,
  box,
  paint,
}: {
  readonly transform: Transform;
  readonly box: Box;
  readonly paint: Paint;
}) {
  const yPx = Math.round(toPx(transform, [0, 0])[1]) + 0.5;
  const strokes = Array.from({ length: Math.ceil(box.widthPx / 12) }, (_, index) => box.leftPx + index * 12);
  return (
    <>
      <Line
        points={[box.leftPx, yPx, box.leftPx + box.widthPx, yPx]}
        stroke={paint.pencil}
        strokeWidth={pens.thin}
      />
      {strokes.map((xPx) => (
        <Line key={xPx} points={[xPx + 6, yPx, xPx, yPx + 6]} stroke={paint.rule} strokeWidth={pens.thin} />
      ))}
    </>
  );
}
