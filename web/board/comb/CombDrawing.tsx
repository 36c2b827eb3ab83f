import type Konva from "konva";
import { memo } from "react";
import { Shape } from "react-konva";
import type { Vec2 } from "../../../core/foundation/index.ts";
import { useDrawnSelection, useScene } from "../../hand/index.ts";
import { useDocument, useDrawingAids } from "../../stores/index.ts";
import { type Comb, combsOf, type DrawingView } from "../../tools/index.ts";
import type { Paint } from "../paint.ts";
import { pens } from "../pens.ts";
import { type Transform, toPx } from "../viewport.ts";

interface CombDrawingProps {
  readonly view: DrawingView;
  readonly transform: Transform;
  readonly paint: Paint;
}

/** The tallest tooth, and how far teeth stand apart, px. */
const TALLEST_PX = 54;
const SPACING_PX = 7;
const KINK_PX = 9;

/** The curvature comb of the chosen line: a tooth is the longer the tighter the line bends there. */
export const CombDrawing = memo(function CombDrawing({ view, transform, paint }: CombDrawingProps) {
  const isOn = useDrawingAids((aids) => aids.comb);
  const project = useDocument((state) => state.project);
  const selection = useDrawnSelection();
  const scene = useScene();
  if (!isOn) return null;
  const combs = combsOf({ project, scene, selection }, SPACING_PX / transform.pxPerMmAcross);
  return combs
    .filter((comb) => comb.view === view)
    .map((comb) => (
      <Shape
        key={comb.key}
        listening={false}
        sceneFunc={(context) => drawComb(context, comb, { transform, paint })}
      />
    ));
});

function drawComb(
  context: Konva.Context,
  { teeth, kinks }: Comb,
  { transform, paint }: Pick<CombDrawingProps, "transform" | "paint">,
): void {
  const most = Math.max(...teeth.map(({ curvaturePerMm }) => Math.abs(curvaturePerMm)));
  if (!(most > 0)) return;
  // Teeth stand on the outside of the bend.
  const tips = teeth.map(({ at, left, curvaturePerMm }): readonly [Vec2, Vec2] => {
    const foot = toPx(transform, at);
    const px = (-curvaturePerMm / most) * TALLEST_PX;
    const [nx, ny] = unit([left[0] * transform.pxPerMmUp, -left[1] * transform.pxPerMmAcross]);
    return [foot, [foot[0] + nx * px, foot[1] + ny * px]];
  });
  context.setAttr("strokeStyle", paint.warn);
  context.setAttr("lineWidth", pens.thin);
  context.beginPath();
  for (const [foot, tip] of tips) {
    context.moveTo(...foot);
    context.lineTo(...tip);
  }
  tips.forEach(([, tip], index) => {
    if (index === 0) context.moveTo(...tip);
    else context.lineTo(...tip);
  });
  context.stroke();
  context.setAttr("strokeStyle", paint.stop);
  context.setAttr("lineWidth", pens.outline);
  for (const { at } of kinks) {
    const [x, y] = toPx(transform, at);
    context.beginPath();
    context.moveTo(x - KINK_PX, y + KINK_PX);
    context.lineTo(x, y - KINK_PX);
    context.lineTo(x + KINK_PX, y + KINK_PX);
    context.stroke();
  }
}

function unit([x, y]: Vec2): Vec2 {
  const length = Math.hypot(x, y) || 1;
  return [x / length, y / length];
}
