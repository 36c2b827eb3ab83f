import { at, type FlatPoint } from "../foundation/index.ts";
import type { SmoothRun } from "./smooth-runs.ts";

/** A vertex this near to a row is on it: rounding only. */
const ON_ROW_MM = 1e-9;

/** The true edge between two marks that follow each other along a run: the marks are its ends. */
export type MarkSpan = readonly FlatPoint[];

/**
 * A run taken apart where it crosses the rows: the marks that a builder makes along it, and the true edge
 * between each two of them. `rowsMm` ascending; both ends of a run are marks.
 */
export function markSpans({ points }: SmoothRun, rowsMm: readonly number[]): MarkSpan[] {
  const spans: MarkSpan[] = [];
  let span: FlatPoint[] = [at(points, 0)];
  const mark = (point: FlatPoint) => {
    span.push(point);
    spans.push(span);
    span = [point];
  };
  let bay = bayAround(at(points, 0).u, rowsMm);
  for (let i = 1; i < points.length; i++) {
    const from = at(points, i - 1);
    const to = at(points, i);
    if (to.u > bay.afterMm && to.u < bay.beforeMm && i < points.length - 1) {
      span.push(to);
      continue;
    }
    for (const rowMm of rowsBetween(from.u, to.u, rowsMm)) {
      const share = (rowMm - from.u) / (to.u - from.u);
      mark({ u: rowMm, v: from.v + share * (to.v - from.v) });
    }
    if (i === points.length - 1 || isOnRow(to.u, rowsMm)) mark(to);
    else span.push(to);
    bay = bayAround(to.u, rowsMm);
  }
  return spans;
}

/** The stretch between rows that a place lies in, clear of both; empty for a place on a row. */
function bayAround(
  uMm: number,
  rowsMm: readonly number[],
): { readonly afterMm: number; readonly beforeMm: number } {
  if (isOnRow(uMm, rowsMm)) return { afterMm: uMm, beforeMm: uMm };
  const next = firstAtLeast(uMm, rowsMm);
  return {
    afterMm: (rowsMm[next - 1] ?? Number.NEGATIVE_INFINITY) + ON_ROW_MM,
    beforeMm: (rowsMm[next] ?? Number.POSITIVE_INFINITY) - ON_ROW_MM,
  };
}

/** Rows strictly between two places, in the order of travel. */
function rowsBetween(fromMm: number, toMm: number, rowsMm: readonly number[]): number[] {
  const low = Math.min(fromMm, toMm) + ON_ROW_MM;
  const high = Math.max(fromMm, toMm) - ON_ROW_MM;
  const rows: number[] = [];
  for (let i = firstAtLeast(low, rowsMm); i < rowsMm.length && at(rowsMm, i) < high; i++) {
    rows.push(at(rowsMm, i));
  }
  return fromMm < toMm ? rows : rows.reverse();
}

const isOnRow = (valueMm: number, rowsMm: readonly number[]): boolean => {
  const rowMm = rowsMm[firstAtLeast(valueMm - ON_ROW_MM, rowsMm)];
  return rowMm !== undefined && rowMm <= valueMm + ON_ROW_MM;
};

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
