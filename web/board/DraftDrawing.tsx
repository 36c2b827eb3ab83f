import { Circle, Group, Line, Rect, Text } from "react-konva";
import { formatMm, type Vec2 } from "../../core/foundation/index.ts";
import type { Draft, DrawingView, Snap } from "../tools/index.ts";
import { draftPoints } from "./draft-points.ts";
import { linePx } from "./draw-line.ts";
import type { Paint } from "./paint.ts";
import { dashes, pens, sizes } from "./pens.ts";
import { type Box, type Transform, toPx } from "./viewport.ts";

interface DraftDrawingProps {
  readonly draft: Draft;
  readonly transform: Transform;
  readonly paint: Paint;
}

/** A line that is being drawn: what is set down, and dashed where it would go on. */
export function DraftDrawing({ draft, transform, paint }: DraftDrawingProps) {
  const { set, next } = draftPoints(draft);
  const half = sizes.node / 2;
  return (
    <>
      <Line points={linePx(transform, set)} stroke={paint.mark} strokeWidth={pens.outline} />
      <Line
        points={linePx(transform, next)}
        stroke={paint.mark}
        strokeWidth={pens.outline}
        dash={[...dashes.draft]}
      />
      {draft.nodes.map((node, index) => {
        const [x, y] = toPx(transform, node.at);
        const fill = index === 0 && draft.closes ? paint.mark : paint.sheet;
        return (
          <Rect
            key={`${x}/${y}`}
            x={x - half}
            y={y - half}
            width={sizes.node}
            height={sizes.node}
            fill={fill}
            stroke={paint.mark}
            strokeWidth={pens.handle}
          />
        );
      })}
    </>
  );
}

interface SnapMarkProps {
  readonly snap: Snap;
  readonly view: DrawingView;
  readonly transform: Transform;
  readonly box: Box;
  readonly paint: Paint;
}

const LABEL_WIDTH_PX = 220;

/** Where the pointer has snapped to, its coordinates, and why it is there. */
export function SnapMark({ snap, view, transform, box, paint }: SnapMarkProps) {
  const [x, y] = toPx(transform, snap.at);
  const isSnapped = snap.reasons.length > 0;
  const text = [coordinates(snap.at, view), ...snap.reasons].join("\n");
  const heightPx = 8 + 15 * (1 + snap.reasons.length);
  const left = x + 16 + LABEL_WIDTH_PX > box.leftPx + box.widthPx ? x - 16 - LABEL_WIDTH_PX : x + 16;
  const top = y - heightPx - 10 < box.topPx ? y + 14 : y - heightPx - 10;
  return (
    <Group listening={false}>
      <Circle x={x} y={y} radius={isSnapped ? 7 : 3} stroke={paint.mark} strokeWidth={pens.handle} />
      <Text
        text={text}
        x={left}
        y={top}
        width={LABEL_WIDTH_PX}
        align={left < x ? "right" : "left"}
        lineHeight={1.25}
        fontFamily={paint.sans}
        fontSize={sizes.label}
        fill={paint.mark}
        stroke={paint.sheet}
        strokeWidth={3}
        fillAfterStrokeEnabled
      />
    </Group>
  );
}

const coordinates = (at: Vec2, view: DrawingView): string =>
  `x ${formatMm(at[0])}  ${view === "plan" ? "y" : "z"} ${formatMm(at[1])}`;
