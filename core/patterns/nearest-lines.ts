import { at, type FlatPoint } from "../foundation/index.ts";

/** The shortest straight between two sets of lines, and which of each it joins. */
export interface Shortest {
  readonly lengthMm: number;
  readonly from: FlatPoint;
  readonly to: FlatPoint;
  readonly fromLine: number;
  readonly toLine: number;
}

type Line = readonly FlatPoint[];

/**
 * The shortest straight from any of some polylines to any of others; undefined where either have no segment. Boxes
 * round short runs of segments are tried nearest first, until the next lie farther apart than what was found.
 */
export function shortestBetween(some: readonly Line[], others: readonly Line[]): Shortest | undefined {
  const [runs, otherRuns] = [some.flatMap(runsOf), others.flatMap(runsOf)];
  const pairs: Pair[] = [];
  for (const a of runs) for (const b of otherRuns) pairs.push({ a, b, apartMm: boxDistanceMm(a, b) });
  pairs.sort((one, other) => one.apartMm - other.apartMm);
  let best: Shortest | undefined;
  for (const { a, b, apartMm } of pairs) {
    if (best && apartMm >= best.lengthMm) break;
    const found = shortestOfRuns(a, b);
    if (!best || found.lengthMm < best.lengthMm) best = found;
  }
  return best;
}

/** Segments first to end − 1 of a line, and the box around them. */
interface Run {
  readonly line: Line;
  readonly index: number;
  readonly first: number;
  readonly end: number;
  readonly lowU: number;
  readonly highU: number;
  readonly lowV: number;
  readonly highV: number;
}

interface Pair {
  readonly a: Run;
  readonly b: Run;
  readonly apartMm: number;
}

const RUN_SEGMENTS = 32;

function runsOf(line: Line, index: number): readonly Run[] {
  const runs: Run[] = [];
  for (let first = 0; first + 1 < line.length; first += RUN_SEGMENTS) {
    const end = Math.min(first + RUN_SEGMENTS, line.length - 1);
    let [lowU, lowV] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
    let [highU, highV] = [Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY];
    for (let i = first; i <= end; i++) {
      const { u, v } = at(line, i);
      lowU = Math.min(lowU, u);
      highU = Math.max(highU, u);
      lowV = Math.min(lowV, v);
      highV = Math.max(highV, v);
    }
    runs.push({ line, index, first, end, lowU, highU, lowV, highV });
  }
  return runs;
}

function boxDistanceMm(a: Run, b: Run): number {
  const du = Math.max(0, a.lowU - b.highU, b.lowU - a.highU);
  const dv = Math.max(0, a.lowV - b.highV, b.lowV - a.highV);
  return Math.sqrt(du * du + dv * dv);
}

/** Segments that do not cross are nearest at an end of one of them: the points of each run against the other's segments. */
function shortestOfRuns(a: Run, b: Run): Shortest {
  const [ahead, back] = [nearestTo(a, b), nearestTo(b, a)];
  const ends = { fromLine: a.index, toLine: b.index };
  return ahead.lengthMm <= back.lengthMm
    ? { lengthMm: ahead.lengthMm, from: ahead.point, to: ahead.foot, ...ends }
    : { lengthMm: back.lengthMm, from: back.foot, to: back.point, ...ends };
}

/** The point of one run that lies nearest the segments of another, and its foot there. */
function nearestTo(
  points: Run,
  segments: Run,
): { readonly lengthMm: number; readonly point: FlatPoint; readonly foot: FlatPoint } {
  let least = Number.POSITIVE_INFINITY;
  let [point, segment, share] = [at(points.line, points.first), segments.first, 0];
  for (let i = points.first; i <= points.end; i++) {
    const p = at(points.line, i);
    for (let k = segments.first; k < segments.end; k++) {
      const [a, b] = [at(segments.line, k), at(segments.line, k + 1)];
      const du = b.u - a.u;
      const dv = b.v - a.v;
      const size = du * du + dv * dv;
      const t = size === 0 ? 0 : Math.min(1, Math.max(0, ((p.u - a.u) * du + (p.v - a.v) * dv) / size));
      const eu = p.u - a.u - t * du;
      const ev = p.v - a.v - t * dv;
      const missMm2 = eu * eu + ev * ev;
      if (missMm2 < least) {
        least = missMm2;
        [point, segment, share] = [p, k, t];
      }
    }
  }
  const [a, b] = [at(segments.line, segment), at(segments.line, segment + 1)];
  const foot = { u: a.u + (b.u - a.u) * share, v: a.v + (b.v - a.v) * share };
  return { lengthMm: Math.sqrt(least), point, foot };
}
