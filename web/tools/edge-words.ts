import { sayEdge } from "../../core/foundation/index.ts";
import { type ItemEdge, nameOfItem, type Project, planLineOf } from "../../core/project/index.ts";

const ENDS: Readonly<Record<string, string>> = {
  first: "the first edge",
  second: "the second edge",
  start: "the start",
  end: "the end",
};

/** An edge of an item in a sentence: the builder's name for it, else by the node that it leaves. */
export function wordEdge(project: Project, { itemId, edgeId }: ItemEdge): string {
  const item = project.items.find(({ id }) => id === itemId);
  if (item?.kind === "transition") return ENDS[edgeId] ?? sayEdge(edgeId);
  const wing = item?.kind === "plate" ? item.wings.findIndex(({ id }) => id === edgeId) : -1;
  if (wing >= 0) return `the free edge of wing ${wing + 1}`;
  const element = item && planLineOf(item).elements.find(({ id }) => id === edgeId);
  return element?.edgeName ?? sayEdge(edgeId);
}

/** What an item is called, by its id. */
export function wordItem(project: Project, itemId: string): string {
  const item = project.items.find(({ id }) => id === itemId);
  return item ? nameOfItem(item) : itemId;
}
