import { Rect } from "react-konva";
import type { Vec2 } from "../../core/foundation/index.ts";

interface ChoosingBoxProps {
  /** Two opposite corners, px. */
  readonly fromPx: Vec2;
  readonly toPx: Vec2;
  readonly colour: string;
}

/** The box that is drawn round what is to be chosen. */
export function ChoosingBox({ fromPx, toPx, colour }: ChoosingBoxProps) {
  const frame = {
    x: Math.min(fromPx[0], toPx[0]),
    y: Math.min(fromPx[1], toPx[1]),
    width: Math.abs(toPx[0] - fromPx[0]),
    height: Math.abs(toPx[1] - fromPx[1]),
  };
  return (
    <>
      <Rect {...frame} fill={colour} opacity={0.08} />
      <Rect {...frame} stroke={colour} strokeWidth={1} dash={[5, 4]} />
    </>
  );
}
