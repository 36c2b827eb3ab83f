import { at, type FlatPoint } from "../foundation/index.ts";

/** The greatest height of an outline over a place along it; nothing is lowest of all. */
export function highestWood(outline: readonly FlatPoint[], u: number): number {
  let highest = Number.NEGATIVE_INFINITY;
  outline.forEach((to, i) => {
    const from = at(outline, i - 1);
    if (Math.min(from.u, to.u) > u || Math.max(from.u, to.u) < u) return;
    const share = to.u === from.u ? 1 : (u - from.u) / (to.u - from.u);
    highest = Math.max(highest, from.v + share * (to.v - from.v));
  });
  return highest;
}
