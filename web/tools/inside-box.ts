import type { Vec2 } from "../../core/foundation/index.ts";
import type { Grip } from "../../core/project/index.ts";
import type { DrawingView } from "./drawing-view.ts";
import { ownerKey, type Scene, type SceneLine } from "./scene.ts";
import { gripKey, wholeOf } from "./several.ts";

/** A box of one view by two opposite corners. */
export interface ChoosingBox {
  readonly view: DrawingView;
  readonly from: Vec2;
  readonly to: Vec2;
}

/**
 * What a box chooses: the things that lie wholly inside it in its view; where there is none, the nodes inside it.
 * The mirror image is not looked at.
 */
export function insideBox(scene: Scene, box: ChoosingBox): readonly Grip[] {
  const isInside = insideOf(box);
  const lines = scene.lines.filter((line) => line.view === box.view);
  const outside = new Set(
    lines.flatMap(({ line, edges }) => (edges.every((edge) => isEdgeInside(edge)) ? [] : [ownerKey(line)])),
  );
  const wholes = lines.filter(({ line, edges }) => edges.length > 0 && !outside.has(ownerKey(line)));
  if (wholes.length > 0) return unique(wholes.map(({ line }) => wholeOf(line)));
  return unique(
    lines.flatMap(({ line, nodes }) =>
      nodes.flatMap(({ nodeId, at }): readonly Grip[] => (isInside(at) ? [{ line, nodeId }] : [])),
    ),
  );

  function isEdgeInside(edge: SceneLine["edges"][number]): boolean {
    return edge.stretches.every(({ points }) => points.every(isInside));
  }
}

/** Everything that is drawn, as wholes: items, openings and profiles. */
export const everything = (scene: Scene): readonly Grip[] =>
  unique(scene.lines.map(({ line }) => wholeOf(line)));

function insideOf({ from, to }: ChoosingBox): (at: Vec2) => boolean {
  const [left, right] = [Math.min(from[0], to[0]), Math.max(from[0], to[0])];
  const [bottom, top] = [Math.min(from[1], to[1]), Math.max(from[1], to[1])];
  return ([first, second]) => first >= left && first <= right && second >= bottom && second <= top;
}

const unique = (grips: readonly Grip[]): readonly Grip[] => [
  ...new Map(grips.map((grip) => [gripKey(grip), grip])).values(),
];
