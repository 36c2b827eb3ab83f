import type { Problem } from "../foundation/index.ts";
import type { LineRef } from "./command-types.ts";
import { editLine, planLineOf, withPlanLine } from "./edit-lines.ts";
import { mapKept } from "./map-kept.ts";
import { nameOfItem } from "./names.ts";
import type { EdgeRef, Item, PlanElement, Project, TransitionEdge } from "./schema.ts";

/**
 * The document without a node (or a following piece). An edge reference that ended on it moves to the next kept
 * node in the outline's direction, or to the one before where the next is its other end already.
 */
export function deleteNode(project: Project, line: LineRef, nodeId: string): Project {
  const edited = editLine(project, line, {
    plan: (elements) => withoutId(elements, nodeId),
    side: (nodes) => withoutId(nodes, nodeId),
    depths: (nodes) => withoutId(nodes, nodeId),
    space: (nodes) => withoutId(nodes, nodeId),
  });
  return line.of === "item" ? moveReferences(project, edited, line.itemId) : edited;
}

/**
 * The later document with the references to one item's nodes moved away from the nodes that the earlier one
 * still had. A reference without two kept nodes to go to stays, and is a problem of its own.
 */
export function moveReferences(earlier: Project, later: Project, itemId: string): Project {
  const elements = elementsOf(earlier, itemId);
  const kept = new Set(elementsOf(later, itemId).map((element) => element.id));
  const items = mapKept(later.items, (item) =>
    mapEdges(item, (edge) => movedReference(edge, itemId, elements, kept)),
  );
  return items === later.items ? later : { ...later, items };
}

/**
 * The references that a command moved to other nodes, each as a problem of kind "reference-moved" at the piece
 * that follows: to be told once, when it happens.
 */
export function movedReferences(before: Project, after: Project): readonly Problem[] {
  if (before.items === after.items) return [];
  const earlier = new Map(followsOf(before));
  return followsOf(after).flatMap(([key, { item, follow }]): readonly Problem[] => {
    const edge = earlier.get(key)?.follow.edge;
    const { fromNodeId, toNodeId } = follow.edge;
    const isMoved =
      edge?.itemId === follow.edge.itemId && (edge.fromNodeId !== fromNodeId || edge.toNodeId !== toNodeId);
    if (!isMoved) return [];
    const place = { itemId: item.id, nodeId: follow.id };
    return [{ kind: "reference-moved", place, name: nameOfItem(item), fromNodeId, toNodeId }];
  });
}

const followsOf = (project: Project) =>
  project.items.flatMap((item) =>
    piecesOf(item).map((follow) => [`${item.id}/${follow.id}`, { item, follow }] as const),
  );

/** Everything of an item that refers to an edge. */
function piecesOf(item: Item): readonly { readonly id: string; readonly edge: EdgeRef }[] {
  if (item.kind === "transition")
    return (["first", "second"] as const).flatMap((side) => {
      const edge = item[side];
      return edge.kind === "stretch" ? [{ id: side, edge: edge.edge }] : [];
    });
  return planLineOf(item).elements.flatMap((element) => (element.kind === "follow" ? [element] : []));
}

/** The item with its references to edges changed; the same item when none changes. */
export function mapEdges(item: Item, move: (edge: EdgeRef) => EdgeRef): Item {
  if (item.kind === "transition") {
    const [first, second] = [moveInEdge(item.first, move), moveInEdge(item.second, move)];
    return first === item.first && second === item.second ? item : { ...item, first, second };
  }
  const line = planLineOf(item);
  const elements = mapKept(line.elements, (element) => {
    if (element.kind === "node") return element;
    const edge = move(element.edge);
    return edge === element.edge ? element : { ...element, edge };
  });
  return elements === line.elements ? item : withPlanLine(item, { ...line, elements });
}

function moveInEdge(own: TransitionEdge, move: (edge: EdgeRef) => EdgeRef): TransitionEdge {
  if (own.kind === "free") return own;
  const edge = move(own.edge);
  return edge === own.edge ? own : { ...own, edge };
}

function movedReference(
  edge: EdgeRef,
  itemId: string,
  elements: readonly PlanElement[],
  kept: ReadonlySet<string>,
): EdgeRef {
  if (edge.itemId !== itemId) return edge;
  const fromNodeId = keptNodeFor(edge.fromNodeId, edge.toNodeId, elements, kept);
  const toNodeId = keptNodeFor(edge.toNodeId, fromNodeId, elements, kept);
  if (fromNodeId === edge.fromNodeId && toNodeId === edge.toNodeId) return edge;
  return { ...edge, fromNodeId, toNodeId };
}

function keptNodeFor(
  nodeId: string,
  otherEndId: string,
  elements: readonly PlanElement[],
  kept: ReadonlySet<string>,
): string {
  const index = elements.findIndex((element) => element.id === nodeId);
  if (index < 0 || kept.has(nodeId)) return nodeId;
  const round = [...elements.slice(index + 1), ...elements.slice(0, index)].filter(
    (element) => element.kind === "node" && kept.has(element.id),
  );
  const next = round[0]?.id;
  const before = round[round.length - 1]?.id;
  return (next === otherEndId ? before : next) ?? nodeId;
}

const elementsOf = (project: Project, itemId: string): readonly PlanElement[] => {
  const item = project.items.find((candidate) => candidate.id === itemId);
  return item ? planLineOf(item).elements : [];
};

const withoutId = <T extends { readonly id: string }>(list: readonly T[], id: string): readonly T[] =>
  list.some((entry) => entry.id === id) ? list.filter((entry) => entry.id !== id) : list;
