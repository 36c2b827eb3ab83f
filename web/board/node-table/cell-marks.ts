import type { NodeColumn } from "../../tools/index.ts";

/** Marks a table cell with the node and the column that it shows. */
export const cellMarks = (nodeId: string, column: NodeColumn) => ({
  "data-node": nodeId,
  "data-column": column,
});

const COLUMNS: readonly NodeColumn[] = ["x", "y", "z", "radius", "along", "depth"];

/** The node and column of the marked cell that something lies in. */
export function cellOf(
  target: EventTarget,
): { readonly nodeId: string; readonly column: NodeColumn } | undefined {
  const cell = target instanceof Element ? target.closest<HTMLElement>("td[data-node]") : null;
  const nodeId = cell?.dataset.node;
  const column = COLUMNS.find((name) => name === cell?.dataset.column);
  return nodeId !== undefined && column ? { nodeId, column } : undefined;
}
