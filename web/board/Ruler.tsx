import { Group, Line, Rect, Text } from "react-konva";
import { formatMm } from "../../core/foundation/index.ts";
import type { Paint } from "./paint.ts";
import { sizes } from "./pens.ts";
import { marksBetween, stepFor } from "./stations.ts";
import { type Box, type Transform, toMm, toPx } from "./viewport.ts";

interface RulerProps {
  readonly box: Box;
  readonly transform: Transform;
  readonly hairlineXMm: number;
  readonly paint: Paint;
}

const LEAST_NUMBER_PX = 56;
const LEAST_TICK_PX = 5;

/** The ruler of stations between plan and side view, with the tab that drags the hairline. */
export function Ruler({ box, transform, hairlineXMm, paint }: RulerProps) {
  const [from] = toMm(transform, [box.leftPx, 0]);
  const [to] = toMm(transform, [box.leftPx + box.widthPx, 0]);
  const numbers = stepFor(transform.pxPerMmAcross, LEAST_NUMBER_PX);
  const ticks = stepFor(transform.pxPerMmAcross, LEAST_TICK_PX);
  const at = (x: number) => Math.round(toPx(transform, [x, 0])[0]) + 0.5;
  const bottom = box.topPx + box.heightPx;
  return (
    <Group listening={false}>
      <Rect x={box.leftPx} y={box.topPx} width={box.widthPx} height={box.heightPx} fill={paint.paper} />
      <Line
        points={[box.leftPx, box.topPx + 0.5, box.leftPx + box.widthPx, box.topPx + 0.5]}
        stroke={paint.rule}
      />
      <Line points={[box.leftPx, bottom - 0.5, box.leftPx + box.widthPx, bottom - 0.5]} stroke={paint.rule} />
      {marksBetween(from, to, ticks).map((x) => {
        const length = x % numbers === 0 ? 8 : x % (ticks * 5) === 0 ? 5 : 3;
        return (
          <Group key={x}>
            <Line points={[at(x), box.topPx, at(x), box.topPx + length]} stroke={paint.pencil} />
            <Line points={[at(x), bottom, at(x), bottom - length]} stroke={paint.pencil} />
          </Group>
        );
      })}
      {marksBetween(from, to, numbers).map((x) => (
        <Text
          key={x}
          text={String(x)}
          x={at(x) - 40}
          y={box.topPx}
          width={80}
          height={box.heightPx}
          align="center"
          verticalAlign="middle"
          fontFamily={paint.mono}
          fontSize={sizes.caption}
          fill={paint.pencil}
        />
      ))}
      <HairlineTab xPx={at(hairlineXMm)} box={box} text={formatMm(hairlineXMm)} paint={paint} />
    </Group>
  );
}

function HairlineTab({
  xPx,
  box,
  text,
  paint,
}: {
  readonly xPx: number;
  readonly box: Box;
  readonly text: string;
  readonly paint: Paint;
}) {
  const width = 64;
  const height = 22;
  const y = box.topPx + (box.heightPx - height) / 2;
  return (
    <Group>
      <Rect x={xPx - width / 2} y={y} width={width} height={height} fill={paint.mark} cornerRadius={3} />
      <Text
        text={text}
        x={xPx - width / 2}
        y={y}
        width={width}
        height={height}
        align="center"
        verticalAlign="middle"
        fontFamily={paint.mono}
        fontSize={sizes.caption}
        fill={paint.onMark}
      />
    </Group>
  );
}
