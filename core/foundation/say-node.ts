/**
 * How a node is labelled in a table: ids that the program makes (n1, n2 …; d1, d2 … for depths) by their number alone, any other by
 * itself. The one place, with `sayNode` and `sayEdge`, that decides how a node is said.
 */
export const nodeLabel = (nodeId: string): string => nodeId.replace(/^[nd](?=\d+$)/, "");

/** A node in a sentence: `node 2`; the ends of a piece e1 that follows an edge: `the start of followed edge 1`. */
export function sayNode(nodeId: string): string {
  const [, number, end] = /^e(\d+)(?:-(start|end))?$/.exec(nodeId) ?? [];
  if (number === undefined) return `node ${nodeLabel(nodeId)}`;
  return end === undefined ? `followed edge ${number}` : `the ${end} of followed edge ${number}`;
}

/** An edge in a sentence, by the node that it leaves: `the edge after node 2`; `followed edge 1` by itself. */
export function sayEdge(edgeId: string): string {
  const [, number, next] = /^e(\d+)(-next)?$/.exec(edgeId) ?? [];
  if (number === undefined) return `the edge after node ${nodeLabel(edgeId)}`;
  return next === undefined ? `followed edge ${number}` : `the edge after followed edge ${number}`;
}
