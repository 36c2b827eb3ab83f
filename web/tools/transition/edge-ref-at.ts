import {
  type EdgeRef,
  type Item,
  type PlanElement,
  type Project,
  planLineOf,
} from "../../../core/project/index.ts";

/** The corners of a transition that its edges run between, by edge. */
const TRANSITION_ENDS: Readonly<Record<string, readonly [string, string]>> = {
  first: ["first-start", "first-end"],
  end: ["first-end", "second-end"],
  second: ["second-start", "second-end"],
  start: ["first-start", "second-start"],
};

/**
 * A drawn edge of a section, plate or transition, or the free edge of a wing by the wing's id, as a reference, from the node at one end to the node at the other;
 * undefined for what a transition cannot begin or end at.
 */
export function edgeRefAt(
  project: Project,
  edge: { readonly itemId: string; readonly edgeId: string; readonly hand: "right" | "left" },
): EdgeRef | undefined {
  const item = project.items.find(({ id }) => id === edge.itemId);
  if (!item || item.kind === "fence") return undefined;
  const ends = nodesOfEdge(item, edge.edgeId);
  return ends && { itemId: item.id, fromNodeId: ends[0], toNodeId: ends[1], hand: edge.hand };
}

function nodesOfEdge(item: Item, edgeId: string): readonly [string, string] | undefined {
  if (item.kind === "transition") return TRANSITION_ENDS[edgeId];
  const isWing = item.kind === "plate" && item.wings.some(({ id }) => id === edgeId);
  if (isWing) return [`${edgeId}-start`, `${edgeId}-end`];
  const { elements, closed } = planLineOf(item);
  return endsOf(elements, closed, edgeId);
}

function endsOf(
  elements: readonly PlanElement[],
  closed: boolean,
  edgeId: string,
): readonly [string, string] | undefined {
  const followed = elements.find(({ kind, id }) => kind === "follow" && id === edgeId);
  if (followed) return [startOf(followed), endOf(followed)];
  const index = elements.findIndex((element) => edgeLeaving(element) === edgeId);
  const from = elements[index];
  const to = elements[index + 1] ?? (closed ? elements[0] : undefined);
  return from && to && from !== to ? [endOf(from), startOf(to)] : undefined;
}

/** A piece that follows an edge ends in nodes of its own, and the segment after it is an edge of its own. */
const edgeLeaving = ({ kind, id }: PlanElement): string => (kind === "follow" ? `${id}-next` : id);
const startOf = ({ kind, id }: PlanElement): string => (kind === "follow" ? `${id}-start` : id);
const endOf = ({ kind, id }: PlanElement): string => (kind === "follow" ? `${id}-end` : id);
