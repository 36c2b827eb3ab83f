import type { ReactNode } from "react";
import { Group, Rect } from "react-konva";
import type { Box } from "./viewport.ts";

/** A view of the board: its paper, and what is drawn on it, cut off at its edges. */
export function View({
  box,
  paper,
  children,
}: {
  readonly box: Box;
  readonly paper: string;
  readonly children: ReactNode;
}) {
  return (
    <Group
      clipX={box.leftPx}
      clipY={box.topPx}
      clipWidth={box.widthPx}
      clipHeight={box.heightPx}
      listening={false}
    >
      <Rect x={box.leftPx} y={box.topPx} width={box.widthPx} height={box.heightPx} fill={paper} />
      {children}
    </Group>
  );
}
