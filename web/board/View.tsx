import type { ReactNode } from "react";
import { Group } from "react-konva";
import type { Box } from "./viewport.ts";

/** A view of the board: what is drawn in it is cut off at its edges. */
export function View({ box, children }: { readonly box: Box; readonly children: ReactNode }) {
  return (
    <Group
      clipX={box.leftPx}
      clipY={box.topPx}
      clipWidth={box.widthPx}
      clipHeight={box.heightPx}
      listening={false}
    >
      {children}
    </Group>
  );
}
