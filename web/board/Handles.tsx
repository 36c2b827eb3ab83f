import type Konva from "konva";
import { memo } from "react";
import { Shape } from "react-konva";
import { distance2, type Vec2 } from "../../core/foundation/index.ts";
import type { SceneLine, SceneNode } from "../tools/index.ts";
import type { Paint } from "./paint.ts";
import { pens, sizes } from "./pens.ts";
import { type Transform, toPx } from "./viewport.ts";

interface HandlesProps {
  readonly line: SceneLine;
  readonly transform: Transform;
  readonly paint: Paint;
  /** The chosen ones. */
  readonly nodeIds: readonly string[];
}

/** The handles of the chosen line: square nodes, round ones on curves, rings where there is a radius. */
export const Handles = memo(function Handles({ line, transform, paint, nodeIds }: HandlesProps) {
  const draw = (context: Konva.Context) => {
    context.setAttr("strokeStyle", paint.mark);
    for (const node of withoutCrowd(line.nodes, transform, nodeIds)) {
      const isChosen = nodeIds.includes(node.nodeId);
      context.setAttr("fillStyle", isChosen ? paint.mark : paint.sheet);
      context.setAttr("lineWidth", node.mark === "ring" ? pens.handle * 2 : pens.handle);
      context.beginPath();
      tracePath(context, node, toPx(transform, node.at));
      context.fill();
      context.stroke();
    }
  };
  return <Shape sceneFunc={draw} listening={false} />;
});

/** Handles nearer to each other than this would hide the line. */
const CROWD_PX = 5;

/** The nodes whose handles have room, and the chosen ones. */
function withoutCrowd(
  nodes: readonly SceneNode[],
  transform: Transform,
  nodeIds: readonly string[],
): readonly SceneNode[] {
  let last: Vec2 | undefined;
  return nodes.filter((node) => {
    const here = toPx(transform, node.at);
    const isCrowded = last !== undefined && distance2(last, here) < CROWD_PX;
    if (!isCrowded) last = here;
    return !isCrowded || nodeIds.includes(node.nodeId);
  });
}

function tracePath(context: Konva.Context, node: SceneNode, [x, y]: readonly [number, number]): void {
  const half = sizes.node / 2;
  if (node.mark === "square") context.rect(x - half, y - half, sizes.node, sizes.node);
  else context.arc(x, y, half, 0, 2 * Math.PI);
}

/** The nodes of a line that is not chosen: they can be grabbed, and say so quietly. */
export const QuietHandles = memo(function QuietHandles({
  line,
  transform,
  paint,
}: Omit<HandlesProps, "nodeIds">) {
  const draw = (context: Konva.Context) => {
    // The corners that a circle is made of say nothing beside it.
    if (line.kind === "opening" && line.nodes.every((node) => node.mark === "ring")) return;
    context.setAttr("fillStyle", paint.ink);
    for (const node of withoutCrowd(line.nodes, transform, [])) {
      const [x, y] = toPx(transform, node.at);
      context.beginPath();
      context.arc(x, y, sizes.quietNode / 2, 0, 2 * Math.PI);
      context.fill();
    }
  };
  return <Shape sceneFunc={draw} listening={false} />;
});
