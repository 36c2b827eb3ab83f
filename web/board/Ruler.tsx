import type Konva from "konva";
import { Group, Rect, Shape } from "react-konva";
import { useLengths } from "../controls/index.ts";
import { stepFor, type Units, wordGrid } from "../lengths/index.ts";
import { LEAST_STRONG_PX, marksBetween } from "../tools/index.ts";
import { Letters } from "./Letters.tsx";
import type { Paint } from "./paint.ts";
import { pens, sizes } from "./pens.ts";
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
  const lengths = useLengths();
  const [from, to] = ends(box, transform);
  const numbers = stepFor(lengths.units, transform.pxPerMmAcross, LEAST_STRONG_PX);
  const draw = (context: Konva.Context) => drawTicks(context, { box, transform, paint }, lengths.units);
  return (
    <Group listening={false}>
      <Rect x={box.leftPx} y={box.topPx} width={box.widthPx} height={box.heightPx} fill={paint.paper} />
      <Shape sceneFunc={draw} listening={false} />
      {marksBetween(from, to, numbers).map((x) => (
        <Letters
          key={x}
          text={wordGrid(lengths, x)}
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

/** Tens of mm have a taller tick in their middle; inches are halved. */
const STEPS_TO_A_MIDDLE_TICK: Readonly<Record<Units, number>> = { mm: 5, inch: 4 };

/** Ticks on both edges, so that the eye finds the station from above and from below. */
function drawTicks(context: Konva.Context, { box, transform, paint }: RulerProps, units: Units): void {
  const [from, to] = ends(box, transform);
  const step = stepFor(units, transform.pxPerMmAcross, LEAST_TICK_PX);
  const apart = Math.round(stepFor(units, transform.pxPerMmAcross, LEAST_STRONG_PX) / step);
  const bottomPx = box.topPx + box.heightPx;
  context.beginPath();
  for (const x of marksBetween(from, to, step)) {
    const index = Math.round(x / step);
    const lengthPx = index % apart === 0 ? 8 : index % STEPS_TO_A_MIDDLE_TICK[units] === 0 ? 5 : 3;
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
const WIDE_TAB_PX = 88;
const TAB_HEIGHT_PX = 22;

/** The tab on the ruler that drags the hairline, with the station it stands at. */
export function HairlineTab({ box, transform, paint, xMm }: RulerProps & { readonly xMm: number }) {
  const { show } = useLengths();
  const text = show(xMm);
  const widthPx = text.length > 8 ? WIDE_TAB_PX : TAB_WIDTH_PX;
  const x = xOf(transform, xMm) - widthPx / 2;
  const y = box.topPx + (box.heightPx - TAB_HEIGHT_PX) / 2;
  const size = { x, y, width: widthPx, height: TAB_HEIGHT_PX };
  return (
    <>
      <Rect {...size} fill={paint.mark} cornerRadius={3} />
      <Letters
        {...size}
        text={text}
        align="center"
        verticalAlign="middle"
        fontFamily={paint.mono}
        fontSize={sizes.caption}
        fill={paint.onMark}
      />
    </>
  );
}
