import { Group, Rect } from "react-konva";
import type { Vec2 } from "../../../core/foundation/index.ts";
import { useLengths } from "../../controls/index.ts";
import type { Lengths } from "../../lengths/index.ts";
import type { DrawingView, Snap } from "../../tools/index.ts";
import { Letters } from "../Letters.tsx";
import type { Paint } from "../paint.ts";
import { pens, sizes } from "../pens.ts";
import { type Box, type Transform, toPx } from "../viewport.ts";
import { SignDrawing } from "./SignDrawing.tsx";

interface SnapMarkProps {
  readonly snap: Snap;
  readonly view: DrawingView;
  readonly transform: Transform;
  readonly box: Box;
  readonly paint: Paint;
}

const LINE_PX = 16;
const LETTER_PX = 5.9;
/** Clear of the largest sign. */
const ASIDE_PX = 18;

/** Where the pointer has snapped to: the signs of what it lies on, its coordinates, and why it is there in words. */
export function SnapMark({ snap, view, transform, box, paint }: SnapMarkProps) {
  const lengths = useLengths();
  const [x, y] = toPx(transform, snap.at);
  const lines = [coordinates(snap.at, view, lengths), ...snap.reasons];
  const widthPx = 16 + LETTER_PX * Math.max(...lines.map((line) => line.length));
  const heightPx = 10 + LINE_PX * lines.length;
  const isPastEdge = x + ASIDE_PX + widthPx > box.leftPx + box.widthPx;
  const left = Math.max(box.leftPx, isPastEdge ? x - ASIDE_PX - widthPx : x + ASIDE_PX);
  const top = y - heightPx - ASIDE_PX < box.topPx ? y + ASIDE_PX : y - heightPx - ASIDE_PX;
  return (
    <Group listening={false}>
      {(snap.signs ?? []).map((sign) => (
        <SignDrawing
          key={`${sign.kind}/${sign.isToRuler ?? false}/${sign.at.join("/")}`}
          {...{ sign, view, transform, box, paint }}
        />
      ))}
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
      <Letters
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
