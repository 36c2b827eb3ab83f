import type { CurvePiece, Path, PathNode } from "../curves/index.ts";
import type { Vec2 } from "../foundation/index.ts";
import type { FollowPiece, PlanLine, PlanNode, SideNode } from "./schema.ts";

/** A line in plan as a path in (x, y); `stretchOf` gives the compiled pieces that a following piece runs along. */
export function planPath(line: PlanLine, stretchOf: (follow: FollowPiece) => readonly CurvePiece[]): Path {
  return {
    closed: line.closed,
    elements: line.elements.map((element) =>
      element.kind === "node"
        ? pathNode(element, [element.x, element.y])
        : {
            kind: "stretch",
            id: edgeAfterFollow(element.id),
            pieces: stretchOf(element),
            next: element.next,
          },
    ),
  };
}

/** A profile or a lower edge as an open path in (x, z). */
export const sidePath = (nodes: readonly SideNode[]): Path => ({
  closed: false,
  elements: nodes.map((node) => pathNode(node, [node.x, node.z])),
});

/**
 * A following piece is an edge with the piece's own id; the segment that leaves its end is another edge, and its
 * ends are nodes, so that both can be named and referred to.
 */
export const edgeAfterFollow = (followId: string): string => `${followId}-next`;
export const followStartNode = (followId: string): string => `${followId}-start`;
export const followEndNode = (followId: string): string => `${followId}-end`;

function pathNode(node: PlanNode | SideNode, at: Vec2): PathNode {
  const { id, radiusMm, meets, tangentInRad, tangentOutRad, next, knotSpacingMm } = node;
  return {
    kind: "node",
    id,
    at,
    next,
    ...(radiusMm === undefined ? {} : { radiusMm }),
    ...(meets === undefined ? {} : { meets }),
    ...(tangentInRad === undefined ? {} : { tangentInRad }),
    ...(tangentOutRad === undefined ? {} : { tangentOutRad }),
    ...(knotSpacingMm === undefined ? {} : { knotSpacingMm }),
  };
}
