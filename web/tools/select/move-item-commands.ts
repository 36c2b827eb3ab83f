import type { Vec2 } from "../../../core/foundation/index.ts";
import type { Command, LineRef, Project } from "../../../core/project/index.ts";
import type { Scene, SceneNode } from "../scene.ts";
import { findLine } from "../scene.ts";

/** Where the nodes of an item, and of the lower edge of a fence, stood when a drag began. */
export interface ItemStart {
  readonly itemId: string;
  readonly nodes: readonly SceneNode[];
  readonly lowerEdge: readonly SceneNode[];
}

export function startOfItem(scene: Scene, itemId: string): ItemStart {
  return {
    itemId,
    nodes: findLine(scene, { of: "item", itemId })?.nodes ?? [],
    lowerEdge: findLine(scene, { of: "lower-edge", itemId })?.nodes ?? [],
  };
}

/** How far an item may move: with mirroring, none of its nodes crosses the centre line. */
export function allowedMove(start: ItemStart, by: Vec2, isMirrored: boolean): Vec2 {
  const leastY = Math.min(...start.nodes.map((node) => node.at[1]));
  return isMirrored && leastY >= 0 ? [by[0], Math.max(by[1], -leastY)] : by;
}

/** The commands that bring an item from where it stood by a distance in plan; its lower edge keeps its heights. */
export function moveItemCommands(project: Project, start: ItemStart, by: Vec2): readonly Command[] {
  const line: LineRef = { of: "item", itemId: start.itemId };
  const lowerEdge: LineRef = { of: "lower-edge", itemId: start.itemId };
  if (!project.items.some((item) => item.id === start.itemId)) return [];
  const move = (where: LineRef, offset: Vec2) => (node: SceneNode) => ({
    kind: "move-node" as const,
    line: where,
    nodeId: node.nodeId,
    to: [node.at[0] + offset[0], node.at[1] + offset[1]] as const,
  });
  return [...start.nodes.map(move(line, by)), ...start.lowerEdge.map(move(lowerEdge, [by[0], 0]))];
}
