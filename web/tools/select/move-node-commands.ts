import { COINCIDENT_POINTS_MM, type Vec2 } from "../../../core/foundation/index.ts";
import type { Command, LineRef, Project } from "../../../core/project/index.ts";

/**
 * The commands that move a node. An end of a fence takes the end of its lower edge along where the two stand
 * over each other, so that the edge still reaches.
 */
export function moveNodeCommands(
  project: Project,
  line: LineRef,
  nodeId: string,
  to: Vec2,
): readonly Command[] {
  const move: Command = { kind: "move-node", line, nodeId, to };
  return [move, ...lowerEdgeCommands(project, line, nodeId, to)];
}

function lowerEdgeCommands(project: Project, line: LineRef, nodeId: string, to: Vec2): readonly Command[] {
  if (line.of !== "item") return [];
  const fence = project.items.find((item) => item.id === line.itemId);
  if (fence?.kind !== "fence" || fence.lowerEdge.kind !== "heights") return [];
  const { elements } = fence.line;
  const node = elements.find((element) => element.id === nodeId);
  const isEnd = elements[0] === node || elements.at(-1) === node;
  if (!isEnd || node?.kind !== "node") return [];
  const { nodes } = fence.lowerEdge;
  const under = [nodes[0], nodes.at(-1)].find(
    (end) => end && Math.abs(end.x - node.x) <= COINCIDENT_POINTS_MM,
  );
  if (!under || to[0] === node.x) return [];
  const lowerEdge: LineRef = { of: "lower-edge", itemId: fence.id };
  return [{ kind: "move-node", line: lowerEdge, nodeId: under.id, to: [to[0], under.z] }];
}
