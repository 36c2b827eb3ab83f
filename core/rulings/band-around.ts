import type { GridLines } from "./grid-lines.ts";
import type { Band, PathStep } from "./grid-search.ts";

/** The part of a finer grid that lies within `firstMm` and `secondMm` of a path. */
export function bandAround(
  path: readonly PathStep[],
  first: GridLines,
  second: GridLines,
  reach: { readonly firstMm: number; readonly secondMm: number },
): Band {
  const low = new Int32Array(first.atMm.length);
  const high = new Int32Array(first.atMm.length);
  let [from, to] = [0, 0];
  for (let i = 0; i < low.length; i++) {
    const mm = first.atMm[i] ?? 0;
    while (from + 1 < path.length && (path[from + 1]?.firstMm ?? 0) < mm - reach.firstMm) from++;
    while (to + 1 < path.length && (path[to]?.firstMm ?? 0) <= mm + reach.firstMm) to++;
    low[i] = lineAtOrBefore(second, (path[from]?.secondMm ?? 0) - reach.secondMm);
    high[i] = lineAtOrAfter(second, (path[to]?.secondMm ?? 0) + reach.secondMm);
  }
  return { low, high };
}

function lineAtOrBefore({ atMm }: GridLines, mm: number): number {
  let [low, high] = [0, atMm.length - 1];
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((atMm[middle] ?? 0) <= mm) low = middle;
    else high = middle - 1;
  }
  return low;
}

function lineAtOrAfter(lines: GridLines, mm: number): number {
  const before = lineAtOrBefore(lines, mm);
  const isOn = (lines.atMm[before] ?? 0) >= mm;
  return isOn ? before : Math.min(lines.atMm.length - 1, before + 1);
}
