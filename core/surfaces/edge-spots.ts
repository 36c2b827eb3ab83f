import { derivativeOnPiece, pointOnPiece } from "../curves/index.ts";
import {
  addSpace,
  at,
  crossSpace,
  dotSpace,
  type FlatPoint,
  lengthSpace,
  type SpacePoint,
} from "../foundation/index.ts";
import {
  developRuled,
  placeOnEdge,
  pointOnRuled,
  type RuledPlace,
  type RuledSurface,
  type Ruling,
  rulingAt,
} from "../rulings/index.ts";
import {
  type ChartPlace,
  heightAtPlace,
  normalAtPlace,
  pieceIndexOfXi,
  placeOfXi,
  spacePointAt,
  turnAtPlace,
  uAtPlace,
  vAtPlace,
  xiOfPlan,
  xiRange,
} from "./cylinder-chart.ts";
import { footFinder } from "./plumb-walls.ts";
import { wallFinder, wallFinders, wallPoint } from "./ruled-walls.ts";
import type { EdgeTrace, LyingSheet, RegionEdge, SectionSheet, TransitionSheet } from "./types.ts";

/** A place on a sheet's edge in space: on the drawn surface, the way the loop runs, and the sheet's inward normal. */
export interface EdgeSpot {
  readonly point: SpacePoint;
  /** Unit vector; the sheet lies to its left, seen against the normal. */
  readonly along: SpacePoint;
  /** Unit vector square to the edge. */
  readonly normal: SpacePoint;
}

/** The spot at a share (0 to 1) of a region edge of a sheet of the right or whole hand. */
export function spotOnEdge(sheet: LyingSheet, edge: RegionEdge, share: number): EdgeSpot {
  return sheet.kind === "section" ? spotOnSection(sheet, edge, share) : spotOnTransition(sheet, edge, share);
}

/** Finds the place of a share of a region edge on the neutral fibre laid flat, as the edge's own points are. */
export function flatOnEdges(sheet: LyingSheet): (edge: RegionEdge, share: number) => FlatPoint {
  return sheet.kind === "transition"
    ? flatOnTransition(sheet)
    : (edge, share) => flatOnSection(sheet, edge, share);
}

function flatOnTransition(sheet: TransitionSheet): ReturnType<typeof flatOnEdges> {
  const laid = sheet.strips.map(({ shares, shift }) => ({
    shift,
    development: developRuled(sheet.chart.surface, sheet.depths.neutralMm, shares),
  }));
  const finders = wallFinders(sheet.chart.surface, sheet.depths.neutralMm);
  return (edge, share) => {
    const { trace } = edge;
    const place =
      trace && (trace.kind === "ruled" ? placeOnTrace(trace, share) : placeOfWall(trace, share, finders));
    if (!trace || !place) return between(at(edge.flat, 0), at(edge.flat, -1), share);
    const { development, shift } = at(laid, trace.strip ?? 0);
    const { u, v } = development.flatAt(place);
    return { u: u + shift.u, v: v + shift.v };
  };
}

type WallTrace = Extract<EdgeTrace, { kind: "plan" | "plumb" }>;

function placeOfWall(
  { kind, piece, from, to }: WallTrace,
  share: number,
  finders: ReturnType<typeof wallFinders>,
): RuledPlace | undefined {
  const [x, y] = pointOnPiece(piece, from + (to - from) * share);
  return finders(kind)({ x, y });
}

/** The place of a ruled chart at a share of a trace. */
export const placeOnTrace = (
  { from, to }: Extract<EdgeTrace, { kind: "ruled" }>,
  share: number,
): RuledPlace => ({
  sMm: from.sMm + (to.sMm - from.sMm) * share,
  t: from.t + (to.t - from.t) * share,
});

function flatOnSection(sheet: SectionSheet, edge: RegionEdge, share: number): FlatPoint {
  const { trace } = edge;
  if (!trace || trace.kind === "ruled") return between(at(edge.flat, 0), at(edge.flat, -1), share);
  const { chart, depths } = sheet;
  const [x, y] = pointOnPiece(trace.piece, trace.from + (trace.to - trace.from) * share);
  if (trace.kind === "plumb") {
    const foot = footFinder(chart, depths.neutralMm)({ x, y });
    return {
      u: uAtPlace(chart, foot.place) - depths.neutralMm * turnAtPlace(chart, foot.place),
      v: vAtPlace(chart, foot.place, foot.y),
    };
  }
  const place = placeOfXi(chart, xiOfPlan(chart, { x, y }), pieceOfTrace(sheet, trace));
  return {
    u: uAtPlace(chart, place) - depths.neutralMm * turnAtPlace(chart, place),
    v: vAtPlace(chart, place, y),
  };
}

const between = (a: FlatPoint, b: FlatPoint, share: number): FlatPoint => ({
  u: a.u + (b.u - a.u) * share,
  v: a.v + (b.v - a.v) * share,
});

/** The piece of the profile that a traced stretch lies on: that of its middle. */
function pieceOfTrace(
  { chart }: SectionSheet,
  trace: Extract<EdgeTrace, { kind: "plan" | "plumb" }>,
): number {
  const [x, y] = pointOnPiece(trace.piece, (trace.from + trace.to) / 2);
  return pieceIndexOfXi(chart, xiOfPlan(chart, { x, y }));
}

function spotOnSection(sheet: SectionSheet, edge: RegionEdge, share: number): EdgeSpot {
  const { chart } = sheet;
  const { trace } = edge;
  if (!trace || trace.kind === "ruled") return spotOnRuling(sheet, edge, share);
  const t = trace.from + (trace.to - trace.from) * share;
  const [x, y] = pointOnPiece(trace.piece, t);
  const [dx, dy] = derivativeOnPiece(trace.piece, t);
  const place = placeOfXi(chart, xiOfPlan(chart, { x, y }), pieceOfTrace(sheet, trace));
  const normal = normalAtPlace(chart, place);
  const sign = trace.to > trace.from ? 1 : -1;
  const rise = -(normal.x * dx + normal.y * dy) / normal.z;
  return {
    point: { x, y, z: heightAtPlace(chart, place, y) },
    along: unit({ x: sign * dx, y: sign * dy, z: sign * rise }),
    normal,
  };
}

/** On the ruling at a profile corner, the first or the last of the chart. */
function spotOnRuling({ chart }: SectionSheet, edge: RegionEdge, share: number): EdgeSpot {
  const [a, b] = [at(edge.points, 0), at(edge.points, -1)];
  const [first, last] = xiRange(chart);
  const place: ChartPlace = placeOfXi(chart, a.u < chart.lengthUMm / 2 ? first : last);
  const v = a.v + (b.v - a.v) * share;
  const y = chart.pivotYMm + (v - vAtPlace(chart, place, chart.pivotYMm)) * chart.ruling.y;
  const sign = b.v > a.v ? 1 : -1;
  return {
    point: spacePointAt(chart, place, y, 0),
    along: addSpace(ZERO, chart.ruling, sign),
    normal: normalAtPlace(chart, place),
  };
}

const ZERO: SpacePoint = { x: 0, y: 0, z: 0 };
const unit = (a: SpacePoint): SpacePoint => addSpace(ZERO, a, 1 / (lengthSpace(a) || 1));

/** Steps of the share by which the direction of an edge is felt. */
const FEEL = 1e-5;

function spotOnTransition(sheet: TransitionSheet, edge: RegionEdge, share: number): EdgeSpot {
  const { surface } = sheet.chart;
  const { trace } = edge;
  if (!trace) return { point: ZERO, along: ZERO, normal: ZERO };
  if (trace.kind !== "ruled") return spotOnWall(sheet, trace, share);
  const place = placeOnTrace(trace, share);
  const ruling = rulingAt(surface, inside(place.sMm, trace));
  const along = directionOnTrace(surface, trace, share, ruling);
  const { normal } = ruling;
  const square = addSpace(normal, along, -dotSpace(normal, along));
  return { point: pointOnRuled(surface, place, 0), along, normal: unit(square) };
}

/** The way that a trace runs: along a side the drawn edge's own, so that it is sure where rulings crowd; else as felt. */
function directionOnTrace(
  surface: RuledSurface,
  trace: Extract<EdgeTrace, { kind: "ruled" }>,
  share: number,
  { firstMm, secondMm }: Ruling,
): SpacePoint {
  const { from, to } = trace;
  const sign = to.sMm > from.sMm ? 1 : -1;
  const corner = share < 0.5 === sign > 0 ? "after" : "before";
  if (from.t === 0 && to.t === 0)
    return addSpace(ZERO, placeOnEdge(surface.first, firstMm, corner).tangent, sign);
  if (from.t === 1 && to.t === 1)
    return addSpace(ZERO, placeOnEdge(surface.second, secondMm, corner).tangent, sign);
  const [before, after] = [Math.max(0, share - FEEL), Math.min(1, share + FEEL)];
  const [a, b] = [before, after].map((part) => pointOnRuled(surface, placeOnTrace(trace, part), 0));
  return a && b ? unit(addSpace(b, a, -1)) : ZERO;
}

/** An opening's edge on the drawn surface lies over its plan curve, however it is cut. */
function spotOnWall({ chart: { surface } }: TransitionSheet, trace: WallTrace, share: number): EdgeSpot {
  const { piece, from, to } = trace;
  const find = wallFinder(surface, "plan", 0);
  const pointAt = wallPoint(surface, find, piece, 0);
  const t = from + (to - from) * share;
  const [x, y] = pointOnPiece(piece, t);
  const { normal } = rulingAt(surface, find({ x, y })?.sMm ?? 0);
  const [before, after] = [Math.max(0, share - FEEL), Math.min(1, share + FEEL)];
  const [a, b] = [pointAt(from + (to - from) * before), pointAt(from + (to - from) * after)];
  const along = unit(addSpace(b, a, -1));
  return { point: pointAt(t), along, normal: unit(addSpace(normal, along, -dotSpace(normal, along))) };
}

/** At a border of pieces the ruling is asked for on the side that the edge lies on. */
function inside(sMm: number, { from, to }: Extract<EdgeTrace, { kind: "ruled" }>): number {
  const [low, high] = from.sMm < to.sMm ? [from.sMm, to.sMm] : [to.sMm, from.sMm];
  const hair = Math.min(1e-6, (high - low) / 4);
  return Math.min(Math.max(sMm, low + hair), Math.max(low + hair, high - hair));
}

/** The direction from an edge into its sheet: square to edge and normal. */
export const inwardAt = ({ along, normal }: EdgeSpot): SpacePoint => crossSpace(normal, along);
