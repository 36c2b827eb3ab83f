import { Circle, Rect, Ring } from "react-konva";
import type { SceneLine } from "../tools/index.ts";
import type { Paint } from "./paint.ts";
import { pens, sizes } from "./pens.ts";
import { type Transform, toPx } from "./viewport.ts";

interface HandlesProps {
  readonly line: SceneLine;
  readonly transform: Transform;
  readonly paint: Paint;
  readonly nodeId: string | undefined;
}

/** The handles of the chosen line: square nodes, round ones on curves, rings where there is a radius. */
export function Handles({ line, transform, paint, nodeId }: HandlesProps) {
  return (
    <>
      {line.nodes.map((node) => {
        const [x, y] = toPx(transform, node.at);
        const fill = node.nodeId === nodeId ? paint.mark : paint.sheet;
        const shared = { x, y, fill, stroke: paint.mark, strokeWidth: pens.handle };
        const half = sizes.node / 2;
        if (node.mark === "round") return <Circle key={node.nodeId} {...shared} radius={half} />;
        if (node.mark === "ring") {
          return (
            <Ring
              key={node.nodeId}
              {...shared}
              fill={paint.mark}
              innerRadius={node.nodeId === nodeId ? 0 : half - 1}
              outerRadius={half + 1.5}
            />
          );
        }
        return (
          <Rect
            key={node.nodeId}
            {...shared}
            offsetX={half}
            offsetY={half}
            width={sizes.node}
            height={sizes.node}
          />
        );
      })}
    </>
  );
}

/** The nodes of a line that is not chosen: they can be grabbed, and say so quietly. */
export function QuietHandles({ line, transform, paint }: Omit<HandlesProps, "nodeId">) {
  return (
    <>
      {line.nodes.map((node) => {
        const [x, y] = toPx(transform, node.at);
        return <Circle key={node.nodeId} x={x} y={y} radius={sizes.quietNode / 2} fill={paint.ink} />;
      })}
    </>
  );
}
