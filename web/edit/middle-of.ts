import { roundTo, type Vec2 } from "../../core/foundation/index.ts";
import type { Grip } from "../../core/project/index.ts";
import { gripKey, ownerKey, type Scene } from "../tools/index.ts";

/** The middle of what is chosen as the plan shows it, to the millimetre; the origin where the plan shows none of it. */
export function middleOf(scene: Scene, grips: readonly Grip[]): Vec2 {
  const keys = new Set(grips.map(gripKey));
  const points = scene.lines.flatMap((line) =>
    line.view !== "plan"
      ? []
      : keys.has(ownerKey(line.line))
        ? line.edges.flatMap((edge) => edge.stretches.flatMap((stretch) => stretch.points))
        : line.nodes
            .filter(({ nodeId }) => keys.has(gripKey({ line: line.line, nodeId })))
            .map(({ at }) => at),
  );
  if (points.length === 0) return [0, 0];
  const middle = (axis: 0 | 1) => {
    const values = points.map((point) => point[axis]);
    return roundTo((Math.min(...values) + Math.max(...values)) / 2, 0);
  };
  return [middle(0), middle(1)];
}
