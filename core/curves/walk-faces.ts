import { at, distance2, type Vec2 } from "../foundation/index.ts";

/** An edge of an arrangement walked one way, with what is wanted on its left. */
export interface HalfEdge {
  readonly start: number;
  readonly end: number;
  /** The point at a share from 0 to 1 of the way. */
  readonly pointAt: (share: number) => Vec2;
}

/**
 * Simple closed loops out of half-edges that have the wanted area on their left, each half-edge used once: at a vertex
 * the walk takes the next way clockwise, which keeps one connected area on its left, and a walk that comes back
 * to a vertex is closed off there. So areas that touch in a point are loops of their own, and so is a hole that
 * touches its outline. Half-edges that lead nowhere are left out.
 */
export function walkFaces<Half extends HalfEdge>(
  halves: readonly Half[],
  vertices: readonly Vec2[],
): readonly (readonly Half[])[] {
  const leaving = new Map<number, Half[]>();
  for (const half of halves) {
    const known = leaving.get(half.start);
    if (known) known.push(half);
    else leaving.set(half.start, [half]);
  }
  const loops: Half[][] = [];
  const used = new Set<Half>();
  for (const first of halves) {
    if (used.has(first)) continue;
    let path: Half[] = [];
    const places = new Map<number, number>();
    for (let half: Half | undefined = first; half; ) {
      used.add(half);
      places.set(half.start, path.length);
      path.push(half);
      const { end }: Half = half;
      const place = places.get(end);
      if (place !== undefined) {
        const loop = path.slice(place);
        for (const { start } of loop) places.delete(start);
        loops.push(loop);
        path = path.slice(0, place);
      }
      if (path.length === 0) break;
      const ways: readonly Half[] = (leaving.get(end) ?? []).filter((way) => !used.has(way));
      half = ways.length > 1 ? nextClockwise(half, ways, at(vertices, end)) : ways[0];
    }
  }
  return loops;
}

/** Directions at a vertex are taken this far away, or nearer where an edge does not go so far, mm. */
const LOOK_MM = 1;

/** The way that is met first turning clockwise from where one came, seen on a small circle round the vertex. */
function nextClockwise<Half extends HalfEdge>(
  arriving: Half,
  ways: readonly Half[],
  vertex: Vec2,
): Half | undefined {
  const back: HalfEdge["pointAt"] = (share) => arriving.pointAt(1 - share);
  const reaches = [back, ...ways.map(({ pointAt }) => pointAt)].map((pointAt) => reachOf(pointAt, vertex));
  const radiusMm = Math.min(LOOK_MM, ...reaches.map((reachMm) => reachMm / 2));
  const backRad = directionOn(back, vertex, radiusMm);
  let [best, leastTurn]: [Half | undefined, number] = [undefined, Number.POSITIVE_INFINITY];
  for (const way of ways) {
    const turn = aroundFrom(backRad - directionOn(way.pointAt, vertex, radiusMm));
    if (turn < leastTurn) [best, leastTurn] = [way, turn];
  }
  return best;
}

const SHARES = Array.from({ length: 16 }, (_, i) => (i + 1) / 16);

/** How far an edge goes away from a vertex, mm. */
const reachOf = (pointAt: HalfEdge["pointAt"], vertex: Vec2): number =>
  Math.max(...SHARES.map((share) => distance2(pointAt(share), vertex)));

/** The direction from a vertex to where an edge first leaves a circle round it, rad. */
function directionOn(pointAt: HalfEdge["pointAt"], vertex: Vec2, radiusMm: number): number {
  const first = SHARES.find((share) => distance2(pointAt(share), vertex) >= radiusMm) ?? 1;
  let [inside, outside] = [first - 1 / 16, first];
  for (let i = 0; i < 50; i++) {
    const middle = (inside + outside) / 2;
    if (distance2(pointAt(middle), vertex) < radiusMm) inside = middle;
    else outside = middle;
  }
  const [x, y] = pointAt(outside);
  return Math.atan2(y - vertex[1], x - vertex[0]);
}

/** An angle above 0, up to a full turn. */
function aroundFrom(angleRad: number): number {
  const turnRad = 2 * Math.PI;
  const rest = angleRad - turnRad * Math.floor(angleRad / turnRad);
  return rest > 0 ? rest : turnRad;
}
