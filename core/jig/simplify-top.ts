import { at, type FlatPoint } from "../foundation/index.ts";

/**
 * A line with the points left out that straight joining does not need (Ramer 1972, Douglas and Peucker 1973;
 * from memory), measured in v. Both ends stay.
 */
export function simplifyTop(points: readonly FlatPoint[], missMm: number): FlatPoint[] {
  const kept = new Set([0, points.length - 1]);
  keepWorst(points, 0, points.length - 1, missMm, kept);
  return points.filter((_, i) => kept.has(i));
}

function keepWorst(
  points: readonly FlatPoint[],
  from: number,
  to: number,
  missMm: number,
  kept: Set<number>,
): void {
  const worst = worstBetween(points, from, to);
  if (worst.missMm <= missMm) return;
  kept.add(worst.index);
  keepWorst(points, from, worst.index, missMm, kept);
  keepWorst(points, worst.index, to, missMm, kept);
}

/** The point that strays most in v from the straight line between two others. */
export function worstBetween(
  points: readonly FlatPoint[],
  from: number,
  to: number,
): { readonly index: number; readonly missMm: number } {
  const a = at(points, from);
  const b = at(points, to);
  const span = b.u - a.u;
  let worst = { index: from, missMm: 0 };
  for (let index = from + 1; index < to; index++) {
    const point = at(points, index);
    const share = span > 0 ? (point.u - a.u) / span : 0;
    const missMm = Math.abs(point.v - a.v - share * (b.v - a.v));
    if (missMm > worst.missMm) worst = { index, missMm };
  }
  return worst;
}

/** Height of a line at a place along it; its end heights beyond its ends. Points ascend in u. */
export function heightOnTop(points: readonly FlatPoint[], uMm: number): number {
  let low = 0;
  let high = points.length - 1;
  if (uMm <= at(points, low).u) return at(points, low).v;
  if (uMm >= at(points, high).u) return at(points, high).v;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (at(points, middle).u <= uMm) low = middle;
    else high = middle;
  }
  const a = at(points, low);
  const b = at(points, high);
  return b.u > a.u ? a.v + ((uMm - a.u) / (b.u - a.u)) * (b.v - a.v) : a.v;
}
