import { at, COINCIDENT_POINTS_MM, distance2, type Vec2 } from "../foundation/index.ts";
import { meetPieces, type ReadyPiece, readyToMeet } from "./meet-pieces.ts";
import { nearestOnPiece } from "./nearest-on-piece.ts";
import { type Box, visitNearBoxes } from "./piece-box.ts";
import { endOfPiece, pointOnPiece, startOfPiece } from "./pieces.ts";
import type { CurvePiece } from "./types.ts";

/** A stretch of a piece between two vertices at which pieces meet; it meets nothing in between. */
export interface Fragment {
  /** Index of its piece. */
  readonly source: number;
  readonly from: number;
  readonly to: number;
  readonly start: number;
  readonly end: number;
}

/** One edge of an arrangement: a fragment, or several that lie on each other; the first gives its direction. */
export interface ArrangedEdge {
  readonly fragments: readonly [Fragment, ...Fragment[]];
  readonly start: number;
  readonly end: number;
}

/** Pieces cut where they meet: vertices as points, edges between them. */
export interface Arrangement {
  readonly vertices: readonly Vec2[];
  readonly edges: readonly ArrangedEdge[];
}

/**
 * Cuts pieces wherever two of them cross, touch, end on each other or begin to run together. What lies within
 * `nearMm` is one place; a piece shorter than that falls away.
 */
export function arrangePieces(
  pieces: readonly CurvePiece[],
  boxes: readonly Box[],
  nearMm: number,
): Arrangement {
  const points: Vec2[] = pieces.flatMap((piece) => [startOfPiece(piece), endOfPiece(piece)]);
  const stops: Stop[][] = pieces.map(() => []);
  const ready: (ReadyPiece | undefined)[] = [];
  const readyAt = (index: number): ReadyPiece => {
    const known = ready[index] ?? readyToMeet(at(pieces, index), at(boxes, index));
    ready[index] = known;
    return known;
  };
  visitNearBoxes(boxes, nearMm, (i, j) => {
    for (const meeting of meetPieces(readyAt(i), readyAt(j), nearMm)) {
      at(stops, i).push({ t: meeting.a, point: points.length });
      at(stops, j).push({ t: meeting.b, point: points.length });
      points.push(pointOnPiece(at(pieces, i), meeting.a));
    }
  });
  const vertexOf = clusterPoints(points, nearMm);
  const fragments = pieces.flatMap((piece, source) => {
    const ends = [at(vertexOf, 2 * source), at(vertexOf, 2 * source + 1)] as const;
    const inner = at(stops, source).map(({ t, point }) => ({ t, vertex: at(vertexOf, point) }));
    return fragmentsOf(piece, source, ends, inner, nearMm);
  });
  const edges = joinCoincident(pieces, fragments, nearMm);
  return { vertices: points, edges: contractTouches(pieces, edges, nearMm) };
}

interface Stop {
  readonly t: number;
  readonly point: number;
}

/** For each point the index of the first point of its cluster: points within `nearMm`, and theirs in turn. */
function clusterPoints(points: readonly Vec2[], nearMm: number): readonly number[] {
  const parents = points.map((_, i) => i);
  const rootOf = (i: number): number => {
    let root = i;
    while (at(parents, root) !== root) root = at(parents, root);
    parents[i] = root;
    return root;
  };
  const rising = points.map((_, i) => i).sort((a, b) => at(points, a)[0] - at(points, b)[0]);
  rising.forEach((i, place) => {
    for (let k = place + 1; k < rising.length; k++) {
      const j = at(rising, k);
      if (at(points, j)[0] - at(points, i)[0] > nearMm) break;
      if (distance2(at(points, i), at(points, j)) > nearMm) continue;
      const [a, b] = [rootOf(i), rootOf(j)];
      parents[Math.max(a, b)] = Math.min(a, b);
    }
  });
  return points.map((_, i) => rootOf(i));
}

/** A stretch from a vertex to itself is a loop of its own only where it goes farther away than this many `nearMm`. */
const LOOP_REACH = 20;

function fragmentsOf(
  piece: CurvePiece,
  source: number,
  [start, end]: readonly [number, number],
  inner: readonly { readonly t: number; readonly vertex: number }[],
  nearMm: number,
): readonly Fragment[] {
  const staysAt = (from: number, to: number): boolean => {
    const here = pointOnPiece(piece, from);
    return [0.25, 0.5, 0.75, 1].every(
      (share) => distance2(here, pointOnPiece(piece, from + (to - from) * share)) <= LOOP_REACH * nearMm,
    );
  };
  const stops = [{ t: 0, vertex: start }];
  for (const stop of inner.toSorted((a, b) => a.t - b.t)) {
    const last = at(stops, -1);
    if (stop.vertex !== last.vertex || !staysAt(last.t, stop.t)) stops.push(stop);
  }
  while (stops.length > 1 && at(stops, -1).vertex === end && staysAt(at(stops, -1).t, 1)) stops.pop();
  if (at(stops, -1).vertex === end && staysAt(at(stops, -1).t, 1)) return [];
  stops.push({ t: 1, vertex: end });
  return stops.slice(1).map((stop, i) => {
    const before = at(stops, i);
    return { source, from: before.t, to: stop.t, start: before.vertex, end: stop.vertex };
  });
}

function joinCoincident(
  pieces: readonly CurvePiece[],
  fragments: readonly Fragment[],
  nearMm: number,
): readonly ArrangedEdge[] {
  const edges: [Fragment, ...Fragment[]][] = [];
  const byEnds = new Map<string, [Fragment, ...Fragment[]][]>();
  for (const fragment of fragments) {
    const { start, end } = fragment;
    const key = start < end ? `${start}/${end}` : `${end}/${start}`;
    const between = byEnds.get(key) ?? [];
    byEnds.set(key, between);
    const same = between.find(([first]) => lieOnEachOther(pieces, first, fragment, nearMm));
    if (same) {
      same.push(fragment);
      continue;
    }
    const edge: [Fragment, ...Fragment[]] = [fragment];
    between.push(edge);
    edges.push(edge);
  }
  return edges.map((members) => ({ fragments: members, start: members[0].start, end: members[0].end }));
}

/**
 * Two curves that touch run together for a hair's breadth by rounding: such an edge becomes a vertex, its two ends
 * one, so that what touches is not called overlapping.
 */
function contractTouches(
  pieces: readonly CurvePiece[],
  edges: readonly ArrangedEdge[],
  nearMm: number,
): readonly ArrangedEdge[] {
  const isTouch = ({ fragments }: ArrangedEdge): boolean => {
    const [{ source, from, to }, second] = fragments;
    const piece = at(pieces, source);
    const lengthMm = distance2(pointOnPiece(piece, from), pointOnPiece(piece, to));
    return second !== undefined && lengthMm <= COINCIDENT_POINTS_MM;
  };
  const touches = edges.filter(isTouch);
  if (touches.length === 0) return edges;
  const merged = new Map<number, number>();
  const vertexOf = (vertex: number): number => {
    const next = merged.get(vertex);
    return next === undefined ? vertex : vertexOf(next);
  };
  for (const { start, end } of touches) {
    const [a, b] = [vertexOf(start), vertexOf(end)];
    if (a !== b) merged.set(Math.max(a, b), Math.min(a, b));
  }
  const places = new Map<number, TouchPlace>();
  for (const { fragments, start } of touches) {
    const place = touchPlace(pieces, fragments);
    if (place.isEnd || !places.has(vertexOf(start))) places.set(vertexOf(start), place);
  }
  const endAt = (source: number, t: number, vertex: number): number => {
    const place = places.get(vertex);
    return place && t > 0 && t < 1 ? nearestOnPiece(at(pieces, source), place.point).t : t;
  };
  const left = edges.filter((edge) => !touches.includes(edge)).flatMap(({ fragments }) => fragments);
  const moved = left.map((one): Fragment => {
    const [start, end] = [vertexOf(one.start), vertexOf(one.end)];
    const { source } = one;
    return { source, from: endAt(source, one.from, start), to: endAt(source, one.to, end), start, end };
  });
  return joinCoincident(
    pieces,
    moved.toSorted((a, b) => a.source - b.source || a.from - b.from),
    nearMm,
  );
}

/** Where the curves of a contracted edge meet: an end of a piece, if there is one, else the middle. */
interface TouchPlace {
  readonly point: Vec2;
  readonly isEnd: boolean;
}

function touchPlace(pieces: readonly CurvePiece[], fragments: ArrangedEdge["fragments"]): TouchPlace {
  for (const { source, from, to } of fragments) {
    if (from === 0 || to === 1)
      return { point: pointOnPiece(at(pieces, source), from === 0 ? 0 : 1), isEnd: true };
  }
  const [{ source, from, to }] = fragments;
  return { point: pointOnPiece(at(pieces, source), (from + to) / 2), isEnd: false };
}

/** Stretches that share their ends and nothing between are one where their insides lie within this many `nearMm`. */
const SAME_STRETCH = 4;

function lieOnEachOther(pieces: readonly CurvePiece[], a: Fragment, b: Fragment, nearMm: number): boolean {
  const [pieceA, pieceB] = [at(pieces, a.source), at(pieces, b.source)];
  if (pieceA.kind === "line" && pieceB.kind === "line") return true;
  return [0.5, 0.25, 0.75].every((share) => {
    const foot = nearestOnPiece(pieceB, pointOnPiece(pieceA, a.from + (a.to - a.from) * share));
    const slack = 1e-6;
    return foot.distanceMm <= SAME_STRETCH * nearMm && foot.t >= b.from - slack && foot.t <= b.to + slack;
  });
}
