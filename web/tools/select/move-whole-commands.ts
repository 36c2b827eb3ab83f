import type { Vec2 } from "../../../core/foundation/index.ts";
import type { Command, Grip, NodeMove } from "../../../core/project/index.ts";
import type { DrawingView } from "../drawing-view.ts";
import { ownerKey, type Scene, type SceneLine } from "../scene.ts";
import { gripKey } from "../several.ts";

/** What is moved together: its lines with the nodes that go along, where they stood when a drag began. */
export interface WholeStart {
  readonly lines: readonly SceneLine[];
}

/** The nodes that go along with what is chosen: all of a whole, and those that are chosen one by one. */
export function startOfGrips(scene: Scene, grips: readonly Grip[]): WholeStart {
  const keys = new Set(grips.map(gripKey));
  return {
    lines: scene.lines.flatMap((line) => {
      if (keys.has(ownerKey(line.line))) return [line];
      const nodes = line.nodes.filter(({ nodeId }) => keys.has(gripKey({ line: line.line, nodeId })));
      return nodes.length > 0 ? [{ ...line, nodes }] : [];
    }),
  };
}

/** How far it may move: with mirroring, none of its nodes crosses the centre line. */
export function allowedMove(start: WholeStart, by: Vec2, isMirrored: boolean): Vec2 {
  const inPlan = start.lines.filter((line) => line.view === "plan");
  const leastY = Math.min(...inPlan.flatMap((line) => line.nodes.map((node) => node.at[1])));
  return isMirrored && leastY >= 0 ? [by[0], Math.max(by[1], -leastY)] : by;
}

/**
 * The command that brings it from where it stood by a distance of a view: what the other view shows goes along in x,
 * and keeps its y or its height.
 */
export function moveWholeCommands(
  start: WholeStart,
  by: Vec2,
  view: DrawingView = "plan",
): readonly Command[] {
  const moves = start.lines.flatMap((line) => {
    const upMm = line.view === view ? by[1] : 0;
    return line.nodes.map(
      ({ nodeId, at }): NodeMove => ({ line: line.line, nodeId, to: [at[0] + by[0], at[1] + upMm] }),
    );
  });
  return moves.length > 0 ? [{ kind: "move-nodes", moves }] : [];
}

/** The view in which what is chosen moves by the arrow keys: the side view where all of it is drawn there. */
export const viewOfStart = ({ lines }: WholeStart): DrawingView =>
  lines.every(({ view }) => view === "side") ? "side" : "plan";
