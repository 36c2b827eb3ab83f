/** Depth along a fence, mm: straight between its nodes, which lie in order, and that of the end beyond them. */
export function depthAlong(
  nodes: readonly { readonly alongMm: number; readonly depthMm: number }[],
  alongMm: number,
): number {
  const index = nodes.findIndex((node) => node.alongMm >= alongMm);
  const [before, after] = [nodes[index - 1], nodes[index]];
  if (!after) return nodes.at(-1)?.depthMm ?? 0;
  if (!before || after.alongMm === before.alongMm) return after.depthMm;
  const share = (alongMm - before.alongMm) / (after.alongMm - before.alongMm);
  return before.depthMm + share * (after.depthMm - before.depthMm);
}
