import { COINCIDENT_POINTS_MM, roundTo, type Vec2 } from "../../../core/foundation/index.ts";
import type { Command, LineRef, Project, SideNode } from "../../../core/project/index.ts";
import { circleOf, circleOutline } from "../opening/index.ts";

/**
 * The commands that move a node. A corner of a circle makes the circle wider or narrower about its centre. An end of a fence takes the end of its lower edge along where the two stand
 * over each other or the edge would no longer reach.
 */
export function moveNodeCommands(
  project: Project,
  line: LineRef,
  nodeId: string,
  to: Vec2,
): readonly Command[] {
  const resized = resizedCircle(project, line, to);
  if (resized) return [resized];
  const move: Command = { kind: "move-node", line, nodeId, to };
  return [move, ...lowerEdgeCommands(project, line, nodeId, to)];
}

function resizedCircle(project: Project, line: LineRef, to: Vec2): Command | undefined {
  if (line.of !== "opening") return undefined;
  const { openingId } = line;
  const opening = project.openings.find(({ id }) => id === openingId);
  const circle = opening && circleOf(opening.outline);
  if (!circle) return undefined;
  const [x, y] = circle.centre;
  const wantedMm = Math.max(Math.abs(to[0] - x), Math.abs(to[1] - y));
  const isKeptRight = project.symmetry === "mirrored" && !circle.isHalf;
  const radiusMm = roundTo(isKeptRight ? Math.min(wantedMm, y) : wantedMm, 6);
  if (!(radiusMm > COINCIDENT_POINTS_MM)) return undefined;
  return { kind: "change-opening", openingId, changes: { outline: circleOutline({ ...circle, radiusMm }) } };
}

function lowerEdgeCommands(project: Project, line: LineRef, nodeId: string, to: Vec2): readonly Command[] {
  if (line.of !== "item") return [];
  const fence = project.items.find((item) => item.id === line.itemId);
  if (fence?.kind !== "fence" || fence.lowerEdge.kind !== "heights") return [];
  const { elements } = fence.line;
  const node = elements.find((element) => element.id === nodeId);
  const isEnd = elements[0] === node || elements.at(-1) === node;
  if (!isEnd || node?.kind !== "node") return [];
  const under = endToTake(fence.lowerEdge.nodes, node.x, to[0]);
  if (!under) return [];
  const lowerEdge: LineRef = { of: "lower-edge", itemId: fence.id };
  return [{ kind: "move-node", line: lowerEdge, nodeId: under.id, to: [to[0], under.z] }];
}

/** The end of the lower edge that stands under the old place, or that the new place would leave behind. */
function endToTake(nodes: readonly SideNode[], fromX: number, toX: number): SideNode | undefined {
  const front = nodes[0];
  const rear = nodes.at(-1);
  if (!front || !rear || fromX === toX) return undefined;
  const isUnder = (end: SideNode) => Math.abs(end.x - fromX) <= COINCIDENT_POINTS_MM;
  if (isUnder(front) || toX < front.x) return front;
  return isUnder(rear) || toX > rear.x ? rear : undefined;
}
