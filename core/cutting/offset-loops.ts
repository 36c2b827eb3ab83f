import { at, type FlatPoint } from "../foundation/index.ts";
import { type FlatEdge, type FlatLoop, polygonOfLoop } from "../patterns/index.ts";

/** A corner sharper than this is cut off square, so that its point does not run away: 4 offsets from the corner. */
const MITRE_LIMIT = 4;
/** Two directions that differ by less are one straight line. */
const STRAIGHT_RAD = 1e-9;
/** Corners are looked for this much farther than the limit, so that rounding decides nothing, mm. */
const NEAR_MM = 1e-6;

/**
 * Loops moved away from the foam (outlines grow, holes shrink), each edge by its own distance, with mitred
 * corners; one polygon for each loop, in its own direction. Meant for allowances that are small beside the part:
 * stretches that vanish in an inner corner are taken out, crossings between far-off edges are not looked for.
 */
export function offsetLoops(
  loops: readonly FlatLoop[],
  outwardMm: (edge: FlatEdge) => number,
): (readonly FlatPoint[])[] {
  return loops.map((loop) =>
    loop.edges.every((edge) => outwardMm(edge) === 0)
      ? polygonOfLoop(loop)
      : movedLoop(loop.edges, outwardMm).joins.flatMap(pointsOfJoin),
  );
}

/** An edge that has been moved; `sources` names for each of its points the point of the edge that it came from. */
export interface MovedEdge<Edge extends FlatEdge> {
  readonly edge: Edge;
  readonly points: readonly FlatPoint[];
  readonly sources: readonly number[];
}

/**
 * The edges of a loop moved away from the foam, each point by its own distance (negative: into it), and ended on each
 * other as in `offsetLoops`. Edges that vanish are left out.
 */
export function offsetEdges<Edge extends FlatEdge>(
  edges: readonly Edge[],
  outwardMm: (edge: Edge, point: number) => number,
): readonly MovedEdge<Edge>[] {
  const { stretches, joins } = movedLoop(edges, outwardMm);
  return edges.flatMap((edge, index): MovedEdge<Edge>[] => {
    const own = stretches.flatMap((stretch, i) => (stretch.edge === index ? [i] : []));
    const [first] = own;
    if (first === undefined) return [];
    const points = [at(joins, first).leave];
    const sources = [at(stretches, first).start];
    const add = (point: FlatPoint, source: number) => {
      if (isOnePoint(at(points, -1), point)) return;
      points.push(point);
      sources.push(source);
    };
    for (const i of own) {
      const { end } = at(stretches, i);
      const next = (i + 1) % stretches.length;
      add(at(joins, next).arrive, end);
      add(at(joins, next).leave, end);
    }
    return points.length > 1 ? [{ edge, points, sources }] : [];
  });
}

/** One straight stretch, moved: its ends, its direction, how far it has been moved at most, and where it came from. */
interface Stretch {
  readonly from: FlatPoint;
  readonly to: FlatPoint;
  readonly along: FlatPoint;
  readonly movedMm: number;
  readonly edge: number;
  readonly start: number;
  readonly end: number;
}

/** Where one stretch ends and the next one starts; the same point unless a step or a blunt end lies between. */
interface Join {
  readonly arrive: FlatPoint;
  readonly leave: FlatPoint;
}

/** The stretches that are left of a moved loop, and where each of them joins the one before it. */
function movedLoop<Edge extends FlatEdge>(
  edges: readonly Edge[],
  outwardMm: (edge: Edge, point: number) => number,
): { readonly stretches: readonly Stretch[]; readonly joins: readonly Join[] } {
  let stretches = edges.flatMap((edge, index) => stretchesOf(edge, index, outwardMm));
  for (;;) {
    const current = stretches;
    const joins = current.map((stretch, i) => joinOf(at(current, i - 1), stretch));
    const kept = current.filter((stretch, i) => {
      const from = at(joins, i).leave;
      const to = at(joins, (i + 1) % joins.length).arrive;
      return (to.u - from.u) * stretch.along.u + (to.v - from.v) * stretch.along.v >= 0;
    });
    if (kept.length === current.length || kept.length < 3) return { stretches: current, joins };
    stretches = kept;
  }
}

function stretchesOf<Edge extends FlatEdge>(
  edge: Edge,
  index: number,
  outwardMm: (edge: Edge, point: number) => number,
): Stretch[] {
  const stretches: Stretch[] = [];
  for (let i = 1; i < edge.points.length; i++) {
    const a = at(edge.points, i - 1);
    const b = at(edge.points, i);
    const along = directionOf(a, b);
    if (along === undefined) continue;
    const [fromMm, toMm] = [outwardMm(edge, i - 1), outwardMm(edge, i)];
    const [from, to] = [moved(a, along, fromMm), moved(b, along, toMm)];
    stretches.push({
      from,
      to,
      along: fromMm === toMm ? along : (directionOf(from, to) ?? along),
      movedMm: Math.max(Math.abs(fromMm), Math.abs(toMm)),
      edge: index,
      start: i - 1,
      end: i,
    });
  }
  return stretches;
}

function directionOf(from: FlatPoint, to: FlatPoint): FlatPoint | undefined {
  const lengthMm = Math.hypot(to.u - from.u, to.v - from.v);
  return lengthMm === 0 ? undefined : { u: (to.u - from.u) / lengthMm, v: (to.v - from.v) / lengthMm };
}

/** The foam lies on the left of every loop, so away from it is to the right. */
const moved = (point: FlatPoint, along: FlatPoint, byMm: number): FlatPoint => ({
  u: point.u + along.v * byMm,
  v: point.v - along.u * byMm,
});

function joinOf(before: Stretch, after: Stretch): Join {
  const turn = before.along.u * after.along.v - before.along.v * after.along.u;
  const facing = before.along.u * after.along.u + before.along.v * after.along.v;
  const isStraight = Math.abs(turn) < STRAIGHT_RAD && facing > 0;
  const reach = Math.max(before.movedMm, after.movedMm);
  if (isStraight || Math.sqrt((1 + facing) / 2) * MITRE_LIMIT < 1) {
    const overrun = isStraight ? 0 : reach;
    return {
      arrive: ahead(before.to, before.along, overrun),
      leave: ahead(after.from, after.along, -overrun),
    };
  }
  const du = after.from.u - before.from.u;
  const dv = after.from.v - before.from.v;
  const corner = ahead(before.from, before.along, (du * after.along.v - dv * after.along.u) / turn);
  // Edges that run nearly on into each other and are moved unlike meet far off: a step joins them.
  const isFar = Math.hypot(corner.u - before.to.u, corner.v - before.to.v) > MITRE_LIMIT * reach + NEAR_MM;
  return isFar ? { arrive: before.to, leave: after.from } : { arrive: corner, leave: corner };
}

const ahead = (point: FlatPoint, along: FlatPoint, byMm: number): FlatPoint => ({
  u: point.u + along.u * byMm,
  v: point.v + along.v * byMm,
});

function pointsOfJoin({ arrive, leave }: Join): FlatPoint[] {
  return isOnePoint(arrive, leave) ? [leave] : [arrive, leave];
}

const isOnePoint = (a: FlatPoint, b: FlatPoint): boolean => Math.hypot(a.u - b.u, a.v - b.v) < 1e-9;
