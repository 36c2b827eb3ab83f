import { at, distance2, type Vec2 } from "../foundation/index.ts";

/**
 * Indices of the points to keep, the ends among them, so that none of the others lies farther than the tolerance
 * from the chord over it (Ramer 1972, Douglas and Peucker 1973: split at the farthest point). Where that peels off
 * point by point the middle is taken instead, so that no order of points makes it slow.
 */
export function thinPoints(points: readonly Vec2[], toleranceMm: number): readonly number[] {
  const kept = new Set([0, points.length - 1]);
  const open: Span[] = [{ from: 0, to: points.length - 1, depth: 0 }];
  for (let span = open.pop(); span !== undefined; span = open.pop()) {
    const { index, missMm } = farthest(points, span.from, span.to);
    if (missMm <= toleranceMm) continue;
    const split = span.depth > DEEPEST ? Math.floor((span.from + span.to) / 2) : index;
    kept.add(split);
    const depth = span.depth + 1;
    open.push({ from: span.from, to: split, depth }, { from: split, to: span.to, depth });
  }
  return [...kept].sort((a, b) => a - b);
}

interface Span {
  readonly from: number;
  readonly to: number;
  readonly depth: number;
}

/** Twice as deep as halving 50,000 points goes. */
const DEEPEST = 32;

/** The point between two others that lies farthest from their chord; none lies at −1. */
export function farthest(
  points: readonly Vec2[],
  from: number,
  to: number,
): { readonly index: number; readonly missMm: number } {
  const [a, b] = [at(points, from), at(points, to)];
  let index = -1;
  let missMm = 0;
  for (let i = from + 1; i < to; i++) {
    const mm = distanceToChord(at(points, i), a, b);
    if (mm > missMm) {
      index = i;
      missMm = mm;
    }
  }
  return { index, missMm };
}

/** How far a point lies from the stretch between two others. */
export function distanceToChord(point: Vec2, a: Vec2, b: Vec2): number {
  const along: Vec2 = [b[0] - a[0], b[1] - a[1]];
  const squared = along[0] ** 2 + along[1] ** 2;
  if (squared === 0) return distance2(point, a);
  const share = ((point[0] - a[0]) * along[0] + (point[1] - a[1]) * along[1]) / squared;
  const t = Math.min(1, Math.max(0, share));
  return Math.hypot(point[0] - a[0] - t * along[0], point[1] - a[1] - t * along[1]);
}
