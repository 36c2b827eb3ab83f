import type Konva from "konva";
import { Group, Rect, Shape, Text } from "react-konva";
import { formatMm } from "../../core/foundation/index.ts";
import { LEAST_STRONG_PX } from "./Grid.tsx";
import type { Paint } from "./paint.ts";
import { pens, sizes } from "./pens.ts";
import { marksBetween, stepFor } from "./stations.ts";
import { type Box, type Transform, toMm, toPx } from "./viewport.ts";

interface RulerProps {
  readonly box: Box;
  readonly transform: Transform;
  readonly paint: Paint;
}

const LEAST_TICK_PX = 5;
const NUMBER_WIDTH_PX = 80;

/** The ruler of stations between plan and side view. */
export function Ruler({ box, transform, paint }: RulerProps) {
  const [from, to] = ends(box, transform);
  const numbers = stepFor(transform.pxPerMmAcross, LEAST_STRONG_PX);
  return (
    <Group listening={false}>
      <Rect x={box.leftPx} y={box.topPx} width={box.widthPx} height={box.heightPx} fill={paint.paper} />
      <Shape sceneFunc={(context) => drawTicks(context, { box, transform, paint })} listening={false} />
      {marksBetween(from, to, numbers).map((x) => (
        <Text
          key={x}
          text={String(x).replace("-", "−")}
          x={xOf(transform, x) - NUMBER_WIDTH_PX / 2}
          y={box.topPx}
          width={NUMBER_WIDTH_PX}
          height={box.heightPx}
          align="center"
          verticalAlign="middle"
          fontFamily={paint.mono}
          fontSize={sizes.caption}
          fill={paint.pencil}
        />
      ))}
    </Group>
  );
}

const ends = (box: Box, transform: Transform): readonly [number, number] => [
  toMm(transform, [box.leftPx, 0])[0],
  toMm(transform, [box.leftPx + box.widthPx, 0])[0],
];
const xOf = (transform: Transform, x: number): number => Math.round(toPx(transform, [x, 0])[0]) + 0.5;

/** Ticks on both edges, so that the eye finds the station from above and from below. */
function drawTicks(context: Konva.Context, { box, transform, paint }: RulerProps): void {
  const [from, to] = ends(box, transform);
  const step = stepFor(transform.pxPerMmAcross, LEAST_TICK_PX);
  const numbers = stepFor(transform.pxPerMmAcross, LEAST_STRONG_PX);
  const bottomPx = box.topPx + box.heightPx;
  context.beginPath();
  for (const x of marksBetween(from, to, step)) {
    const lengthPx = x % numbers === 0 ? 8 : x % (step * 5) === 0 ? 5 : 3;
    const xPx = xOf(transform, x);
    context.moveTo(xPx, box.topPx);
    context.lineTo(xPx, box.topPx + lengthPx);
    context.moveTo(xPx, bottomPx);
    context.lineTo(xPx, bottomPx - lengthPx);
  }
  context.setAttr("lineWidth", pens.thin);
  context.setAttr("strokeStyle", paint.pencil);
  context.stroke();
  context.beginPath();
  for (const yPx of [box.topPx + 0.5, bottomPx - 0.5]) {
    context.moveTo(box.leftPx, yPx);
    context.lineTo(box.leftPx + box.widthPx, yPx);
  }
  context.setAttr("strokeStyle", paint.rule);
  context.stroke();
}

const TAB_WIDTH_PX = 64;
const TAB_HEIGHT_PX = 22;

/** The tab on the ruler that drags the hairline, with the station it stands at. */
export function HairlineTab({ box, transform, paint, xMm }: RulerProps & { readonly xMm: number }) {
  const x = xOf(transform, xMm) - TAB_WIDTH_PX / 2;
  const y = box.topPx + (box.heightPx - TAB_HEIGHT_PX) / 2;
  const size = { x, y, width: TAB_WIDTH_PX, height: TAB_HEIGHT_PX };
  return (
    <>
      <Rect {...size} fill={paint.mark} cornerRadius={3} />
      <Text
        {...size}
        text={formatMm(xMm)}
        align="center"
        verticalAlign="middle"
        fontFamily={paint.mono}
        fontSize={sizes.caption}
        fill={paint.onMark}
      />
    </>
  );
}
