import type { RegionEdge, Sheet } from "../surfaces/index.ts";

/** Every region edge of a sheet. */
export const edgesOf = (sheet: Sheet): readonly RegionEdge[] => sheet.loops.flatMap(({ edges }) => edges);

/** The region edges of a sheet that belong to one drawn edge, in the order of its loops. */
export const edgesWithId = (sheet: Sheet, edgeId: string): readonly RegionEdge[] =>
  edgesOf(sheet).filter((edge) => edge.edgeId === edgeId);

/** The same without the stretches where the drawn edge stands still. */
export const movingEdgesWithId = (sheet: Sheet, edgeId: string): readonly RegionEdge[] =>
  edgesWithId(sheet, edgeId).filter(({ isApex }) => !isApex);

/**
 * The same, from the start of the drawn edge to its end: a loop may begin in the middle of it. The numbers say which
 * of `edgesWithId` each is.
 */
export function edgesInWalk(
  sheet: Sheet,
  edgeId: string,
): readonly (readonly (readonly [RegionEdge, number])[])[] {
  let count = 0;
  return sheet.loops.flatMap(({ edges }) => {
    const runs: [RegionEdge, number][][] = [];
    edges.forEach((edge, i) => {
      if (edge.edgeId !== edgeId) return;
      const last = runs.at(-1);
      if (last && edges[i - 1]?.edgeId === edgeId) last.push([edge, count]);
      else runs.push([[edge, count]]);
      count++;
    });
    const isWrapped =
      runs.length > 1 && edges[0]?.edgeId === edgeId && edges[edges.length - 1]?.edgeId === edgeId;
    if (!isWrapped) return runs;
    const [first, ...rest] = runs;
    const last = rest.at(-1);
    return [...rest.slice(0, -1), [...(last ?? []), ...(first ?? [])]];
  });
}
