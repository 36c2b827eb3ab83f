import type { PlanNode, SideNode, SpaceNode } from "../../core/project/index.ts";
import type { DrawingView } from "./drawing-view.ts";

const known = {
  plan: new WeakMap<readonly SpaceNode[], readonly (PlanNode | SideNode)[]>(),
  side: new WeakMap<readonly SpaceNode[], readonly (PlanNode | SideNode)[]>(),
};

/** The nodes of an edge in space as one view shows them; the same list for the same nodes. */
export function elementsOfEdge(
  nodes: readonly SpaceNode[],
  view: DrawingView,
): readonly (PlanNode | SideNode)[] {
  const before = known[view].get(nodes);
  if (before) return before;
  const elements = nodes.map((node) => (view === "plan" ? inPlan(node) : inSide(node)));
  known[view].set(nodes, elements);
  return elements;
}

const inPlan = ({ z: _z, ...node }: SpaceNode): PlanNode => ({ kind: "node", ...node });
const inSide = ({ y: _y, ...node }: SpaceNode): SideNode => ({ kind: "node", ...node });
