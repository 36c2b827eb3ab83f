import { Circle, Line } from "react-konva";
import type { Vec2 } from "../../../core/foundation/index.ts";
import type { DrawingView, SnapSign } from "../../tools/index.ts";
import type { Paint } from "../paint.ts";
import { dashes, pens } from "../pens.ts";
import { type Box, type Transform, toPx } from "../viewport.ts";
import { signShape } from "./sign-strokes.ts";

interface SignDrawingProps {
  readonly sign: SnapSign;
  readonly view: DrawingView;
  readonly transform: Transform;
  readonly box: Box;
  readonly paint: Paint;
}

/** The sign of one snap on the board, with the thin line that leads to what it comes from. */
export function SignDrawing({ sign, view, transform, box, paint }: SignDrawingProps) {
  const [x, y] = toPx(transform, sign.at);
  const shape = signShape(
    sign.kind,
    (sign.along ?? []).map((direction) => onScreen(direction, transform)),
  );
  const guide = guideOf(sign, { view, transform, box });
  return (
    <>
      {guide ? (
        <Line
          points={guide}
          stroke={paint.mark}
          strokeWidth={pens.thin}
          dash={[...dashes.chain]}
          opacity={0.8}
        />
      ) : null}
      {shape.strokes.map((points) => (
        <Line
          key={points.join("/")}
          points={points.flatMap((point) => [x + point[0], y + point[1]])}
          stroke={paint.mark}
          strokeWidth={pens.handle}
        />
      ))}
      {shape.ringsPx.map((radius) => (
        <Circle
          key={radius}
          x={x}
          y={y}
          radius={radius}
          stroke={paint.mark}
          strokeWidth={pens.handle}
          {...(radius < 2 ? { fill: paint.mark } : {})}
        />
      ))}
    </>
  );
}

/** A direction of the drawing as the screen shows it, unit. */
function onScreen([across, up]: Vec2, { pxPerMmAcross, pxPerMmUp }: Transform): Vec2 {
  const [x, y] = [across * pxPerMmAcross, -up * pxPerMmUp];
  const length = Math.hypot(x, y) || 1;
  return [x / length, y / length];
}

function guideOf(
  { at, guide, isToRuler }: SnapSign,
  { view, transform, box }: Pick<SignDrawingProps, "view" | "transform" | "box">,
): number[] | undefined {
  const [x, y] = toPx(transform, at);
  if (isToRuler) return [x, y, x, view === "plan" ? box.topPx + box.heightPx : box.topPx];
  return guide?.flatMap((point) => [...toPx(transform, point)]);
}
