import { at, type FlatPoint } from "../foundation/index.ts";
import type { BevelledEdge, BevelledLoop } from "./bevelled-edges.ts";

/** A mark this near to where a bevelled edge crosses its row is a mark on that edge, mm. */
const SAME_MARK_MM = 0.02;

/**
 * The bevel at each offset of each row (`rowsMm` ascending in flat u), rad: that of the edge which crosses the row
 * there, 0 where it is square; at a corner the larger of both.
 */
export function bevelsOfRows(
  loops: readonly BevelledLoop[],
  rowsMm: readonly number[],
  offsetsMm: readonly (readonly number[])[],
  datumVMm: number,
): readonly (readonly number[])[] {
  const bevels = offsetsMm.map((offsets) => offsets.map(() => 0));
  const tell = (row: number, vMm: number, bevelRad: number) => {
    const own = at(bevels, row);
    at(offsetsMm, row).forEach((offsetMm, i) => {
      const isHere = Math.abs(offsetMm + datumVMm - vMm) <= SAME_MARK_MM;
      if (isHere && Math.abs(bevelRad) > Math.abs(at(own, i))) own[i] = bevelRad;
    });
  };
  for (const { edges } of loops) {
    for (const edge of edges)
      if (edge.bevelsRad.some((bevelRad) => bevelRad !== 0)) tellEdge(edge, rowsMm, tell);
  }
  return bevels;
}

function tellEdge(
  { points, bevelsRad }: BevelledEdge,
  rowsMm: readonly number[],
  tell: (row: number, vMm: number, bevelRad: number) => void,
): void {
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [at(points, i - 1), at(points, i)];
    const [low, high] = a.u < b.u ? [a.u, b.u] : [b.u, a.u];
    for (let row = firstAtLeast(low - SAME_MARK_MM, rowsMm); row < rowsMm.length; row++) {
      const uMm = at(rowsMm, row);
      if (uMm > high + SAME_MARK_MM) break;
      for (const share of sharesOnRow(a, b, uMm)) {
        const bevelRad = at(bevelsRad, i - 1) + (at(bevelsRad, i) - at(bevelsRad, i - 1)) * share;
        tell(row, a.v + (b.v - a.v) * share, bevelRad);
      }
    }
  }
}

/** Where a stretch meets a row: one place, or both its ends where it lies along the row. */
function sharesOnRow(a: FlatPoint, b: FlatPoint, uMm: number): readonly number[] {
  const spanMm = b.u - a.u;
  if (Math.abs(spanMm) <= SAME_MARK_MM) return [0, 1];
  return [Math.min(1, Math.max(0, (uMm - a.u) / spanMm))];
}

function firstAtLeast(valueMm: number, rowsMm: readonly number[]): number {
  let low = 0;
  let high = rowsMm.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (at(rowsMm, middle) < valueMm) low = middle + 1;
    else high = middle;
  }
  return low;
}
