import { at, type FlatPoint } from "../foundation/index.ts";
import { flatLengthMm, type LaidEdge, type LaidLoop } from "./flat-loops.ts";

/**
 * How far past its end an edge may be carried on straight to meet a neighbour, as a multiple of the gap between
 * them: edges that meet at less than 3° are joined by a small step instead.
 */
const REACH_OF_GAP = 20;

/** A neighbour that does not meet the moved edge and is no longer than so many set-backs lies in what is cut off. */
const SWALLOWED = 4;

/** Moves under this change nothing that anybody can cut, mm. */
const STILL_MM = 1e-9;

/**
 * Moves every edge of a loop inward by its set-back (outward where negative) and lets its neighbours end on it:
 * they are shortened, or carried on straight, or fall away where the set-back swallows them whole. Edges that could not be joined again are named in `failed` and
 * stay where they were.
 */
export function setBackEdges(loop: LaidLoop): {
  readonly loop: LaidLoop;
  readonly failed: readonly string[];
} {
  let edges: readonly MovingEdge[] = loop.edges.map((edge) => ({ ...edge, drawn: edge }));
  const failed: string[] = [];
  for (let i = 0; i < edges.length; i++) {
    const edge = at(edges, i);
    if (edge.setBackMm.every((amount) => Math.abs(amount) <= STILL_MM)) continue;
    const joined = joinNeighbours(edges, i);
    if (joined) {
      edges = joined.edges;
      i = joined.index;
    } else {
      failed.push(edge.edgeId);
    }
  }
  return { loop: { edges: edges.map(({ drawn: _, ...edge }) => edge) }, failed };
}

/** An edge while its loop is set back, with itself as it was drawn: two pieces of an edge may share its id. */
interface MovingEdge extends LaidEdge {
  readonly drawn: LaidEdge;
}

/**
 * The loop with one edge moved and its neighbours ended on it, and where that edge stands in it now. The edge is moved
 * from where it was drawn: what a neighbour that moved before did to its ends is done anew.
 */
function joinNeighbours(
  edges: readonly MovingEdge[],
  index: number,
): { readonly edges: readonly MovingEdge[]; readonly index: number } | undefined {
  const { drawn } = at(edges, index);
  const edge = { ...drawn, drawn };
  const swallowedMm = SWALLOWED * Math.max(...edge.setBackMm.map(Math.abs));
  const isSwallowed = ({ points }: LaidEdge) => flatLengthMm(points) <= swallowedMm;
  const whole = moveInward(edge.points, edge.setBackMm);
  let line = whole;
  let others = [...edges.slice(index + 1), ...edges.slice(0, index)];
  let countBefore = index;
  for (let isJoined = false; !isJoined; ) {
    const last = others.at(-1);
    if (!last) return undefined;
    const joined = joinPolylines(last.points, line);
    others = others.slice(0, -1);
    if (joined) {
      others.push(withPoints(last, joined.first, last.points));
      line = joined.second;
      isJoined = true;
    } else if (isSwallowed(last)) countBefore = Math.max(0, countBefore - 1);
    else return undefined;
  }
  for (let isJoined = false; !isJoined; ) {
    const [first, ...rest] = others;
    if (!first) return undefined;
    const joined = joinPolylines(line, first.points);
    if (joined) {
      others = [withPoints(first, joined.second, first.points), ...rest];
      line = joined.first;
      isJoined = true;
    } else if (isSwallowed(first)) others = rest;
    else return undefined;
  }
  const before = Math.min(countBefore, others.length);
  const [after, front] = [others.slice(0, others.length - before), others.slice(others.length - before)];
  return { edges: [...front, withPoints(edge, line, whole), ...after], index: before };
}

/**
 * An edge with new points made of `before`, whose points its amounts and bevels belong to: what was kept keeps its own,
 * a new end takes those of the kept point beside it.
 */
export function withPoints<Edge extends LaidEdge>(
  edge: Edge,
  points: readonly FlatPoint[],
  before: readonly FlatPoint[],
): Edge {
  if (points === before) return { ...edge, points };
  const places = new Map(before.map((point, i) => [point, i]));
  const known = points.map((point) => places.get(point));
  const nearest = known.map(
    (place, i) =>
      place ?? known.slice(i).find((other) => other !== undefined) ?? lastOf(known.slice(0, i)) ?? 0,
  );
  const pick = (values: readonly number[]) => nearest.map((place) => at(values, place));
  return { ...edge, points, setBackMm: pick(edge.setBackMm), bevelsRad: pick(edge.bevelsRad) };
}

const lastOf = (places: readonly (number | undefined)[]): number | undefined =>
  places.findLast((place) => place !== undefined);

/** Each point moved to the left of the direction of travel (inward on a counter-clockwise loop), corners mitred. */
export function moveInward(points: readonly FlatPoint[], amountsMm: readonly number[]): readonly FlatPoint[] {
  return points.map((point, i) => {
    const before = directionFrom(points, i - 1);
    const after = directionFrom(points, i) ?? before;
    const [a, b] = [before ?? after, after];
    if (!a || !b) return point;
    const [nu, nv] = [-(a.v + b.v), a.u + b.u];
    const size = Math.hypot(nu, nv);
    const mitre = (2 * at(amountsMm, i)) / (size * size);
    return { u: point.u + nu * mitre, v: point.v + nv * mitre };
  });
}

function directionFrom(points: readonly FlatPoint[], i: number): FlatPoint | undefined {
  const [a, b] = [points[i], points[i + 1]];
  if (!a || !b) return undefined;
  const length = Math.hypot(b.u - a.u, b.v - a.v);
  return length === 0 ? undefined : { u: (b.u - a.u) / length, v: (b.v - a.v) / length };
}

/**
 * Lets one polyline end and the next begin where they meet: at the first crossing from that end, or where their
 * straight continuations cross within reach; edges that go on nearly straight are joined by a step.
 */
export function joinPolylines(
  first: readonly FlatPoint[],
  second: readonly FlatPoint[],
): { readonly first: readonly FlatPoint[]; readonly second: readonly FlatPoint[] } | undefined {
  const [end, start] = [at(first, -1), at(second, 0)];
  const gapMm = Math.hypot(end.u - start.u, end.v - start.v);
  if (gapMm <= STILL_MM) return { first, second };
  const met = crossingNear(first, second, REACH_OF_GAP * gapMm);
  if (met) return met;
  const [arriving, leaving] = [directionFrom(first, first.length - 2), directionFrom(second, 0)];
  const goesOn = arriving && leaving && arriving.u * leaving.u + arriving.v * leaving.v > 0.95;
  return goesOn ? { first, second: [end, ...second] } : undefined;
}

/**
 * Two polylines that end and begin where they cross, both carried on straight by the reach; undefined where they do not
 * within the reach, mm, of the first one's end.
 */
export function crossingNear(
  first: readonly FlatPoint[],
  second: readonly FlatPoint[],
  reachMm: number,
): { readonly first: readonly FlatPoint[]; readonly second: readonly FlatPoint[] } | undefined {
  const end = at(first, -1);
  const isNear = (p: FlatPoint): boolean => Math.hypot(p.u - end.u, p.v - end.v) <= reachMm;
  for (let i = first.length - 1; i >= 1 && isNear(at(first, i)); i--) {
    for (let k = 0; k < second.length - 1 && isNear(at(second, k)); k++) {
      const slackBefore = i === first.length - 1 ? reachMm : 0;
      const slackAfter = k === 0 ? reachMm : 0;
      const meeting = crossing(
        [at(first, i - 1), at(first, i)],
        [at(second, k), at(second, k + 1)],
        slackBefore,
        slackAfter,
      );
      if (meeting)
        return { first: [...first.slice(0, i), meeting], second: [meeting, ...second.slice(k + 1)] };
    }
  }
  return undefined;
}

type Segment = readonly [FlatPoint, FlatPoint];

/** Where two segments cross, the first carried on past its end and the second before its start by the given reach. */
function crossing(a: Segment, b: Segment, reachAfterA: number, reachBeforeB: number): FlatPoint | undefined {
  const [du, dv, eu, ev] = [a[1].u - a[0].u, a[1].v - a[0].v, b[1].u - b[0].u, b[1].v - b[0].v];
  const [lengthA, lengthB] = [Math.hypot(du, dv), Math.hypot(eu, ev)];
  const cross = du * ev - dv * eu;
  if (Math.abs(cross) <= 1e-6 * lengthA * lengthB) return undefined;
  const [wu, wv] = [b[0].u - a[0].u, b[0].v - a[0].v];
  const s = (wu * ev - wv * eu) / cross;
  const t = (wu * dv - wv * du) / cross;
  const slack = 1e-12;
  if (s < -slack || s > 1 + reachAfterA / lengthA + slack) return undefined;
  if (t > 1 + slack || t < -reachBeforeB / lengthB - slack) return undefined;
  return { u: a[0].u + s * du, v: a[0].v + s * dv };
}
