import { at, distanceFlat, type FlatPoint } from "../foundation/index.ts";
import type { FlatLoop, PartEdge } from "../patterns/index.ts";

/** A corner of a flat loop, and how far the lower face reaches beyond it; the upper stays behind by as much. */
export interface FlatRimPoint {
  readonly at: FlatPoint;
  readonly offset: FlatPoint;
}

/** A picture leaves out what stands out by less than this, mm. */
const THIN_MM = 0.1;

/** A bevelled corner reaches at most so many times as far as its edges do. */
const MOST_MITRE = 3;

/** Bevels beyond this (63°) are shown as it: no mitre is cut so far over. */
const MOST_SLOPE = 2;

/** Edges that turn by less than this sine go on straight. */
const STRAIGHT_SINE = 0.05;

/**
 * The corners of a flat loop with their bevels: at half a thickness below the neutral fibre the edge lies outward by
 * half × tan(bevel), above it inward. Edges in several loops are taken to have their bevels in the loops' order.
 */
export function rimOfLoop(
  loop: FlatLoop,
  edges: readonly PartEdge[],
  halfThicknessMm: number,
): readonly FlatRimPoint[] {
  const used = new Map<string, number>();
  const points = loop.edges.flatMap((edge): readonly Reach[] => {
    const fromMm = used.get(edge.edgeId) ?? 0;
    const lengths = lengthsAlong(edge.points);
    used.set(edge.edgeId, fromMm + at(lengths, -1));
    const bevels = edges.find(({ edgeId }) => edgeId === edge.edgeId)?.bevels ?? [];
    const kept = thinned(edge.points, THIN_MM);
    return kept.slice(0, -1).map((index, k): Reach => {
      const next = at(kept, k + 1);
      const reach = (i: number) => halfThicknessMm * slopeOf(bevelAt(bevels, fromMm + at(lengths, i)));
      return { at: at(edge.points, index), outAfterMm: reach(index), outBeforeNextMm: reach(next) };
    });
  });
  return points.map((point, i) => {
    const before = at(points, (i + points.length - 1) % points.length);
    const after = at(points, (i + 1) % points.length);
    return { at: point.at, offset: mitre([before, point, after]) };
  });
}

const slopeOf = (bevelRad: number): number => Math.min(MOST_SLOPE, Math.max(-MOST_SLOPE, Math.tan(bevelRad)));

/** A corner, and how far the stretch after it is moved outward, at its start and at its end. */
interface Reach {
  readonly at: FlatPoint;
  readonly outAfterMm: number;
  readonly outBeforeNextMm: number;
}

function mitre([before, here, after]: readonly [Reach, Reach, Reach]): FlatPoint {
  const [a, b] = [before.outBeforeNextMm, here.outAfterMm];
  if (a === 0 && b === 0) return { u: 0, v: 0 };
  const [m, n] = [outward(before.at, here.at), outward(here.at, after.at)];
  const sine = m.u * n.v - m.v * n.u;
  if (Math.abs(sine) < STRAIGHT_SINE) {
    const half = (a + b) / 2;
    return { u: n.u * half, v: n.v * half };
  }
  const corner = { u: (a * n.v - b * m.v) / sine, v: (b * m.u - a * n.u) / sine };
  const most = MOST_MITRE * Math.max(Math.abs(a), Math.abs(b));
  const size = Math.hypot(corner.u, corner.v);
  const share = size > most ? most / size : 1;
  return { u: corner.u * share, v: corner.v * share };
}

/** Outward of a counter-clockwise loop: to the right of the way. */
function outward(a: FlatPoint, b: FlatPoint): FlatPoint {
  const length = distanceFlat(a, b) || 1;
  return { u: (b.v - a.v) / length, v: -(b.u - a.u) / length };
}

function lengthsAlong(points: readonly FlatPoint[]): readonly number[] {
  let lengthMm = 0;
  return points.map((point, i) => {
    if (i > 0) lengthMm += distanceFlat(at(points, i - 1), point);
    return lengthMm;
  });
}

function bevelAt(bevels: PartEdge["bevels"], alongMm: number): number {
  const next = bevels.findIndex((station) => station.alongMm >= alongMm);
  if (next <= 0) return (next < 0 ? bevels.at(-1) : bevels[0])?.bevelRad ?? 0;
  const [a, b] = [at(bevels, next - 1), at(bevels, next)];
  const share = b.alongMm > a.alongMm ? (alongMm - a.alongMm) / (b.alongMm - a.alongMm) : 1;
  return a.bevelRad + (b.bevelRad - a.bevelRad) * share;
}

/** Indices of points enough to stay within a distance of a line (Ramer 1972, Douglas and Peucker 1973); ends kept. */
function thinned(points: readonly FlatPoint[], withinMm: number): readonly number[] {
  const kept = new Set([0, points.length - 1]);
  const open: (readonly [number, number])[] = [[0, points.length - 1]];
  for (let span = open.pop(); span !== undefined; span = open.pop()) {
    const [from, to] = span;
    let [most, farthest] = [withinMm, -1];
    for (let i = from + 1; i < to; i++) {
      const away = distanceToChord(at(points, i), at(points, from), at(points, to));
      if (away > most) [most, farthest] = [away, i];
    }
    if (farthest < 0) continue;
    kept.add(farthest);
    open.push([from, farthest], [farthest, to]);
  }
  return [...kept].sort((a, b) => a - b);
}

function distanceToChord(p: FlatPoint, a: FlatPoint, b: FlatPoint): number {
  const [du, dv] = [b.u - a.u, b.v - a.v];
  const square = du * du + dv * dv;
  const share = square > 0 ? Math.min(1, Math.max(0, ((p.u - a.u) * du + (p.v - a.v) * dv) / square)) : 0;
  return Math.hypot(p.u - a.u - share * du, p.v - a.v - share * dv);
}
