import { COINCIDENT_POINTS_MM, distance2 } from "../foundation/index.ts";
import { type EndToEnd, joinedBends, joinLowerEdges } from "./join-lower-edges.ts";
import { freshIds, type JoinResult, refuse, withJoined } from "./joined-item.ts";
import type { Fence, PlanNode, Project } from "./schema.ts";
import { turnPlanRound } from "./turn-round.ts";

export function joinFences(project: Project, first: Fence, second: Fence): JoinResult {
  const [a, b] = [ownNodes(first), ownNodes(second)];
  if (!a || !b) return refuse("an end follows an edge");
  const placed = endToEnd(a, b);
  const gapMm = gapBetween(placed.front, placed.rear);
  const isMet = gapMm <= COINCIDENT_POINTS_MM;
  const names = freshIds(placed.rear, new Set(placed.front.map(({ id }) => id)));
  const rear = placed.rear.map((node) => ({ ...node, id: names.get(node.id) ?? node.id }));
  const [met, ...beyond] = rear;
  const last = placed.front.at(-1);
  if (!met || !last) return refuse("an end follows an edge");
  const elements = isMet
    ? [...placed.front.slice(0, -1), corner(last, met), ...beyond]
    : [...placed.front, ...rear];
  const lowerEdge = joinLowerEdges(project, first, second, { ...placed, gapMm });
  if (typeof lowerEdge === "string") return refuse(lowerEdge);
  if (isMet) {
    const old = placed.rear[0]?.id;
    if (old !== undefined) names.set(old, last.id);
  }
  const fence: Fence = {
    ...first,
    line: { ...first.line, elements },
    lowerEdge,
    ...joinedBends(project, first, second, { ...placed, gapMm }),
  };
  return withJoined(project, fence, second.id, (edge) =>
    edge.itemId === second.id
      ? {
          ...edge,
          itemId: first.id,
          fromNodeId: names.get(edge.fromNodeId) ?? edge.fromNodeId,
          toNodeId: names.get(edge.toNodeId) ?? edge.toNodeId,
        }
      : edge,
  );
}

const ownNodes = (fence: Fence): readonly PlanNode[] | undefined => {
  const nodes = fence.line.elements.filter((element) => element.kind === "node");
  return nodes.length === fence.line.elements.length && nodes.length > 1 ? nodes : undefined;
};

/** Both lines so that the end of the one and the start of the other are the nearest ends. */
function endToEnd(a: readonly PlanNode[], b: readonly PlanNode[]): EndToEnd {
  const ways = [false, true].flatMap((isFrontTurned) =>
    [false, true].map(
      (isRearTurned): EndToEnd => ({
        front: isFrontTurned ? turnPlanRound(a) : a,
        rear: isRearTurned ? turnPlanRound(b) : b,
        isFrontTurned,
        isRearTurned,
      }),
    ),
  );
  return ways.reduce((best, way) =>
    gapBetween(way.front, way.rear) < gapBetween(best.front, best.rear) ? way : best,
  );
}

function gapBetween(front: readonly PlanNode[], rear: readonly PlanNode[]): number {
  const [end, start] = [front.at(-1), rear[0]];
  return end && start ? distance2([end.x, end.y], [start.x, start.y]) : Number.POSITIVE_INFINITY;
}

/** One node for two that met: it arrives as the one did and leaves as the other. */
function corner(last: PlanNode, met: PlanNode): PlanNode {
  const {
    knotSpacingMm: _spacing,
    tangentOutRad: _out,
    edgeName: _name,
    radiusMm: _radius,
    ...arrives
  } = last;
  return {
    ...arrives,
    next: met.next,
    ...(met.knotSpacingMm === undefined ? {} : { knotSpacingMm: met.knotSpacingMm }),
    ...(met.tangentOutRad === undefined ? {} : { tangentOutRad: met.tangentOutRad, meets: "corner" }),
    ...(met.edgeName === undefined ? {} : { edgeName: met.edgeName }),
  };
}
