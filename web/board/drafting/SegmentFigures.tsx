import { Group, Line } from "react-konva";
import { formatAngle, interpolate2 } from "../../../core/foundation/index.ts";
import { useLengths } from "../../controls/index.ts";
import { type Draft, segmentFigures } from "../../tools/index.ts";
import { Letters } from "../Letters.tsx";
import type { Paint } from "../paint.ts";
import { pens, sizes } from "../pens.ts";
import { type Transform, toPx } from "../viewport.ts";

interface SegmentFiguresProps {
  readonly draft: Draft;
  readonly transform: Transform;
  readonly paint: Paint;
}

const WIDTH_PX = 180;
const BESIDE_PX = 18;
const LEAST_PX = 36;
const ARC_PX = 26;

/** Length and direction of the segment that is being drawn, beside its middle, with the angle off rearward. */
export function SegmentFigures({ draft, transform, paint }: SegmentFiguresProps) {
  const { show } = useLengths();
  const last = draft.nodes.at(-1);
  if (!last || !draft.pointer || draft.circle) return null;
  const { lengthMm, directionRad } = segmentFigures(last.at, draft.pointer);
  const [from, to] = [toPx(transform, last.at), toPx(transform, draft.pointer)];
  const lengthPx = Math.hypot(to[0] - from[0], to[1] - from[1]);
  if (lengthPx < LEAST_PX) return null;
  const [x, y] = interpolate2(from, to, 0.5);
  // To the left of the way, or below where that would lie under the label of the snap.
  const side = to[0] >= from[0] ? 1 : -1;
  const [acrossX, acrossY] = [(-(to[1] - from[1]) / lengthPx) * side, ((to[0] - from[0]) / lengthPx) * side];
  const word = last.next === "curve" ? "chord " : "";
  return (
    <Group listening={false}>
      <Line
        points={[from[0], from[1], from[0] + ARC_PX, from[1]]}
        stroke={paint.mark}
        strokeWidth={pens.thin}
        opacity={0.7}
      />
      <Letters
        text={`${word}${show(lengthMm)}   ${formatAngle(directionRad)}`}
        x={x + acrossX * BESIDE_PX * 1.6 - WIDTH_PX / 2}
        y={y + acrossY * BESIDE_PX - sizes.caption / 2}
        width={WIDTH_PX}
        align="center"
        fontFamily={paint.mono}
        fontSize={sizes.caption}
        fill={paint.mark}
        stroke={paint.sheet}
        strokeWidth={3}
        fillAfterStrokeEnabled
      />
    </Group>
  );
}
