import { at, distanceSpace, type FlatPoint, type SpacePoint } from "../foundation/index.ts";
import type { Part } from "../patterns/index.ts";
import { fibreOf, flatOnEdges, type LyingSheet, type RegionEdge, spotOnEdge } from "../surfaces/index.ts";

/** A place of a drawn edge in space and on the flat, before the edge is set back for its joint. */
interface EdgePlace {
  readonly space: SpacePoint;
  readonly flat: FlatPoint;
  /** Along the drawn edge from its start, mm. */
  readonly alongMm: number;
}

/** One region edge as a row of places, near enough to each other to be joined straight. */
export type DrawnEdge = readonly EdgePlace[];

/** Places on an edge are no farther apart than this, mm: straight between them its length misses 0.03 mm a metre. */
const STEP_MM = 8;

/** Drawn edges of parts; an edge is walked once for both hands, and for every joint along it. */
export type EdgeWalker = (sheet: LyingSheet, part: Part, edgeId: string) => readonly DrawnEdge[];

/** Walks the drawn edges of parts as their sheets have them: one row of places for each region edge. */
export function edgeWalker(): EdgeWalker {
  const walked = new Map<string, readonly DrawnEdge[]>();
  return (sheet, part, edgeId) => {
    const key = `${sheet.id} ${edgeId}`;
    const right = walked.get(key) ?? rightEdges(sheet, part, edgeId);
    walked.set(key, right);
    return part.hand === "left" ? right.map((edge) => edge.map(mirrored)) : right;
  };
}

function rightEdges(sheet: LyingSheet, part: Part, edgeId: string): readonly DrawnEdge[] {
  const onMiddle = flatOnEdges(sheet);
  const fibre = fibreOf(sheet, part.stretches);
  const flatOn: typeof onMiddle = (edge, share) => {
    const { u, v } = onMiddle(edge, share);
    return { u: fibre.flatAt(u), v };
  };
  const edges = sheet.loops.flatMap((loop) => loop.edges).filter((edge) => edge.edgeId === edgeId);
  return edges.filter(({ isApex }) => isApex !== true).map((edge) => placesOn(sheet, edge, flatOn));
}

function placesOn(sheet: LyingSheet, edge: RegionEdge, flatOn: ReturnType<typeof flatOnEdges>): DrawnEdge {
  const spaceAt = (share: number) => spotOnEdge(sheet, edge, share).point;
  const shares = edge.shares.length > 1 ? edge.shares : [0, 1];
  const places: EdgePlace[] = [];
  let alongMm = 0;
  const add = (share: number, space = spaceAt(share)) => {
    const before = places.at(-1);
    if (before !== undefined) alongMm += distanceSpace(before.space, space);
    places.push({ space, flat: flatOn(edge, share), alongMm });
  };
  add(at(shares, 0));
  for (let i = 1; i < shares.length; i++) {
    const [from, to] = [at(shares, i - 1), at(shares, i)];
    const [middle, end] = [spaceAt((from + to) / 2), spaceAt(to)];
    const lengthMm = distanceSpace(at(places, -1).space, middle) + distanceSpace(middle, end);
    const steps = Math.max(1, Math.ceil(lengthMm / STEP_MM));
    for (let k = 1; k < steps; k++) add(from + ((to - from) * k) / steps);
    add(to, end);
  }
  return places;
}

const mirrored = ({ space, flat, alongMm }: EdgePlace): EdgePlace => ({
  space: { ...space, y: -space.y },
  flat: { u: flat.u, v: -flat.v },
  alongMm,
});

/** Where on an edge a point in space lies nearest, and how far off. */
export interface PlaceOnEdge extends EdgePlace {
  readonly missMm: number;
}

/** The place of an edge nearest to a point in space. */
export function nearestPlace(edge: DrawnEdge, point: SpacePoint): PlaceOnEdge | undefined {
  let best: { readonly i: number; readonly share: number; readonly missMm: number } | undefined;
  for (let i = 1; i < edge.length; i++) {
    const [a, b] = [at(edge, i - 1).space, at(edge, i).space];
    const share = shareAlong(a, b, point);
    const missMm = distanceSpace(spaceBetween(a, b, share), point);
    if (best === undefined || missMm < best.missMm) best = { i, share, missMm };
  }
  return best && { ...between(at(edge, best.i - 1), at(edge, best.i), best.share), missMm: best.missMm };
}

/** The place at a length along an edge. */
export function placeAt(edge: DrawnEdge, alongMm: number): EdgePlace {
  const next = Math.max(
    1,
    edge.findIndex((place, i) => i > 0 && place.alongMm >= alongMm),
  );
  const [a, b] = [at(edge, next - 1), at(edge, next)];
  const stepMm = b.alongMm - a.alongMm;
  return between(a, b, stepMm > 0 ? Math.min(1, Math.max(0, (alongMm - a.alongMm) / stepMm)) : 0);
}

function shareAlong(a: SpacePoint, b: SpacePoint, p: SpacePoint): number {
  const [dx, dy, dz] = [b.x - a.x, b.y - a.y, b.z - a.z];
  const square = dx * dx + dy * dy + dz * dz;
  if (square === 0) return 0;
  const share = ((p.x - a.x) * dx + (p.y - a.y) * dy + (p.z - a.z) * dz) / square;
  return Math.min(1, Math.max(0, share));
}

const spaceBetween = (a: SpacePoint, b: SpacePoint, share: number): SpacePoint => ({
  x: a.x + (b.x - a.x) * share,
  y: a.y + (b.y - a.y) * share,
  z: a.z + (b.z - a.z) * share,
});

const between = (a: EdgePlace, b: EdgePlace, share: number): EdgePlace => ({
  space: spaceBetween(a.space, b.space, share),
  flat: {
    u: a.flat.u + (b.flat.u - a.flat.u) * share,
    v: a.flat.v + (b.flat.v - a.flat.v) * share,
  },
  alongMm: a.alongMm + (b.alongMm - a.alongMm) * share,
});
