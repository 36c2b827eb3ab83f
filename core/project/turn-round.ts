import type { PlanNode, SideNode } from "./schema.ts";
import { withChanges } from "./with-changes.ts";

/**
 * An open run of nodes in plan in the other direction: each keeps its place, its radius and its corner; segments,
 * their knot spacings and their names go to the node that they leave now, and typed directions turn about.
 */
export const turnPlanRound = (nodes: readonly PlanNode[]): readonly PlanNode[] =>
  nodes.map((node, index) => withChanges(node, turned(node, nodes[index - 1]), OPTIONAL)).toReversed();

/** As `turnPlanRound`, in the side view. */
export const turnSideRound = (nodes: readonly SideNode[]): readonly SideNode[] =>
  nodes.map((node, index) => withChanges(node, turned(node, nodes[index - 1]), OPTIONAL)).toReversed();

const OPTIONAL = ["knotSpacingMm", "edgeName", "tangentInRad", "tangentOutRad"] as const;

function turned(node: PlanNode | SideNode, before: PlanNode | SideNode | undefined) {
  return {
    next: before?.next ?? ("line" as const),
    knotSpacingMm: before?.knotSpacingMm,
    edgeName: before?.edgeName,
    tangentInRad: about(node.tangentOutRad),
    tangentOutRad: about(node.tangentInRad),
  };
}

function about(angleRad: number | undefined): number | undefined {
  if (angleRad === undefined) return undefined;
  return angleRad > 0 ? angleRad - Math.PI : angleRad + Math.PI;
}
