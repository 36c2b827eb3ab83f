import { Circle, Ellipse, Group, Line, Rect, Text } from "react-konva";
import type { Vec2 } from "../../core/foundation/index.ts";
import { useLengths } from "../controls/index.ts";
import type { Lengths } from "../lengths/index.ts";
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
      {draft.circle ? <DraftCircle circle={draft.circle} transform={transform} paint={paint} /> : null}
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

function DraftCircle({
  circle: { centre, radiusMm },
  transform,
  paint,
}: Omit<DraftDrawingProps, "draft"> & { readonly circle: NonNullable<Draft["circle"]> }) {
  const [x, y] = toPx(transform, centre);
  return (
    <>
      <Ellipse
        x={x}
        y={y}
        radiusX={radiusMm * transform.pxPerMmAcross}
        radiusY={radiusMm * transform.pxPerMmUp}
        stroke={paint.mark}
        strokeWidth={pens.outline}
        dash={[...dashes.draft]}
      />
      <Circle x={x} y={y} radius={sizes.quietNode / 2} fill={paint.mark} />
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

const LINE_PX = 16;
const LETTER_PX = 5.9;

/** Where the pointer has snapped to, its coordinates, and why it is there. */
export function SnapMark({ snap, view, transform, box, paint }: SnapMarkProps) {
  const lengths = useLengths();
  const [x, y] = toPx(transform, snap.at);
  const isSnapped = snap.reasons.length > 0;
  const lines = [coordinates(snap.at, view, lengths), ...snap.reasons];
  const widthPx = 16 + LETTER_PX * Math.max(...lines.map((line) => line.length));
  const heightPx = 10 + LINE_PX * lines.length;
  const isPastEdge = x + 14 + widthPx > box.leftPx + box.widthPx;
  const left = isPastEdge ? x - 14 - widthPx : x + 14;
  const top = y - heightPx - 12 < box.topPx ? y + 14 : y - heightPx - 12;
  return (
    <Group listening={false}>
      <Circle x={x} y={y} radius={isSnapped ? 7 : 3} stroke={paint.mark} strokeWidth={pens.handle} />
      <Rect
        x={left}
        y={top}
        width={widthPx}
        height={heightPx}
        fill={paint.sheet}
        opacity={0.92}
        stroke={paint.rule}
        strokeWidth={pens.thin}
        cornerRadius={3}
      />
      <Text
        text={lines.join("\n")}
        x={left + 8}
        y={top + 6}
        lineHeight={LINE_PX / sizes.label}
        fontFamily={paint.sans}
        fontSize={sizes.label}
        fill={paint.mark}
      />
    </Group>
  );
}

const coordinates = (at: Vec2, view: DrawingView, { show }: Lengths): string =>
  `x ${show(at[0])}  ${view === "plan" ? "y" : "z"} ${show(at[1])}`;
