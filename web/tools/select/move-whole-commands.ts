import type { Vec2 } from "../../../core/foundation/index.ts";
import type { Command } from "../../../core/project/index.ts";
import { ownerKey, type Scene, type SceneLine } from "../scene.ts";

/** The lines of an item or opening with their nodes where they stood when a drag began. */
export interface WholeStart {
  /** Whose lines they are, as `ownerKey` tells it. */
  readonly owner: string;
  readonly lines: readonly SceneLine[];
}

/** A free edge in space counts once, as the plan shows it. */
export const startOfWhole = (scene: Scene, owner: string): WholeStart => ({
  owner,
  lines: scene.lines.filter(
    ({ line }) => ownerKey(line) === owner && !(line.of === "edge" && line.view === "side"),
  ),
});

/** How far it may move: with mirroring, none of its nodes crosses the centre line. */
export function allowedMove(start: WholeStart, by: Vec2, isMirrored: boolean): Vec2 {
  const inPlan = start.lines.filter((line) => line.view === "plan");
  const leastY = Math.min(...inPlan.flatMap((line) => line.nodes.map((node) => node.at[1])));
  return isMirrored && leastY >= 0 ? [by[0], Math.max(by[1], -leastY)] : by;
}

/** The commands that bring it from where it stood by a distance in plan; everything keeps its heights. */
export const moveWholeCommands = (start: WholeStart, by: Vec2): readonly Command[] =>
  start.lines.flatMap(({ line, view, nodes }) =>
    nodes.map((node): Command => {
      const upMm = view === "plan" ? by[1] : 0;
      return {
        kind: "move-node",
        line,
        nodeId: node.nodeId,
        to: [node.at[0] + by[0], node.at[1] + upMm],
      };
    }),
  );
