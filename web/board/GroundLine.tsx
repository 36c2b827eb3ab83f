import type Konva from "konva";
import { Shape } from "react-konva";
import type { Paint } from "./paint.ts";
import { pens } from "./pens.ts";
import { type Box, type Transform, toPx } from "./viewport.ts";

interface GroundLineProps {
  readonly transform: Transform;
  readonly box: Box;
  readonly paint: Paint;
}

const STROKE_APART_PX = 12;

/** The ground, z = 0, with the strokes that say so under it. */
export function GroundLine({ transform, box, paint }: GroundLineProps) {
  const draw = (context: Konva.Context) => {
    const yPx = Math.round(toPx(transform, [0, 0])[1]) + 0.5;
    const rightPx = box.leftPx + box.widthPx;
    context.setAttr("lineWidth", pens.thin);
    context.beginPath();
    for (let xPx = box.leftPx; xPx < rightPx; xPx += STROKE_APART_PX) {
      context.moveTo(xPx + 6, yPx);
      context.lineTo(xPx, yPx + 6);
    }
    context.setAttr("strokeStyle", paint.rule);
    context.stroke();
    context.beginPath();
    context.moveTo(box.leftPx, yPx);
    context.lineTo(rightPx, yPx);
    context.setAttr("strokeStyle", paint.pencil);
    context.stroke();
  };
  return <Shape sceneFunc={draw} listening={false} />;
}
