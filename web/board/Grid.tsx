import type Konva from "konva";
import { Shape } from "react-konva";
import { useLengths } from "../controls/index.ts";
import { stepFor } from "../lengths/index.ts";
import { LEAST_STRONG_PX, marksBetween } from "../tools/index.ts";
import type { Paint } from "./paint.ts";
import { type Box, type Transform, toMm, toPx } from "./viewport.ts";

interface GridProps {
  readonly box: Box;
  readonly transform: Transform;
  readonly paint: Paint;
}

/** Lines of the finer grid are at least this far apart; the stronger ones stand at the numbers of the ruler. */
const LEAST_FINE_PX = 9;

/** The faint grid of a view: fine lines, and stronger ones at the stations. */
export function Grid({ box, transform, paint }: GridProps) {
  const { units } = useLengths();
  const draw = (context: Konva.Context) => {
    const fine = stepFor(units, Math.min(transform.pxPerMmAcross, transform.pxPerMmUp), LEAST_FINE_PX);
    const strong = stepFor(units, transform.pxPerMmAcross, LEAST_STRONG_PX);
    strokeGrid(context, { box, transform, stepMm: fine, colour: paint.grid });
    strokeGrid(context, { box, transform, stepMm: strong, colour: paint.rule });
  };
  return <Shape sceneFunc={draw} listening={false} perfectDrawEnabled={false} />;
}

interface Strokes extends Omit<GridProps, "paint"> {
  readonly stepMm: number;
  readonly colour: string;
}

function strokeGrid(context: Konva.Context, { box, transform, stepMm, colour }: Strokes): void {
  const from = toMm(transform, [box.leftPx, box.topPx + box.heightPx]);
  const to = toMm(transform, [box.leftPx + box.widthPx, box.topPx]);
  context.beginPath();
  for (const x of marksBetween(from[0], to[0], stepMm)) {
    const xPx = Math.round(toPx(transform, [x, 0])[0]) + 0.5;
    context.moveTo(xPx, box.topPx);
    context.lineTo(xPx, box.topPx + box.heightPx);
  }
  for (const up of marksBetween(from[1], to[1], stepMm)) {
    const yPx = Math.round(toPx(transform, [0, up])[1]) + 0.5;
    context.moveTo(box.leftPx, yPx);
    context.lineTo(box.leftPx + box.widthPx, yPx);
  }
  context.setAttr("strokeStyle", colour);
  context.setAttr("lineWidth", 1);
  context.stroke();
}
