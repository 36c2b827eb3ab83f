import { derivativeOnPiece, pointOnPiece, toCurve, walkCurve } from "../curves/index.ts";
import {
  at,
  distanceSpace,
  type FlatPoint,
  integrateWithOpenEnds,
  length2,
  type SpacePoint,
} from "../foundation/index.ts";
import { bendAtPlace, type ChartPlace, pieceIndexOfXi, placeOfXi, xiOfPlan } from "./cylinder-chart.ts";
import { footFinder, plumbSpeed } from "./plumb-walls.ts";
import type { CylinderChart, EdgeTrace, FenceSheet, RegionEdge } from "./types.ts";

/** An edge's length in space on the drawn surface, and at a depth inward from it. */
export interface LengthsInSpace {
  readonly drawnMm: number;
  readonly atDepthMm: number;
}

/**
 * The lengths in space of a traced edge, drawn and at depth `depthMm` inward from the drawn surface: the speed along
 * the plan curve on that surface, by quadrature. An edge without a trace is a ruling and has its own length.
 */
export function edgeLengthsInSpace(chart: CylinderChart, edge: RegionEdge, depthMm: number): LengthsInSpace {
  const { trace } = edge;
  if (trace?.kind === "plumb") return plumbLengths(chart, trace, depthMm);
  if (trace?.kind !== "plan") {
    const lengthMm = Math.abs(at(edge.points, -1).v - at(edge.points, 0).v);
    return { drawnMm: lengthMm, atDepthMm: lengthMm };
  }
  const [low, high] = trace.from < trace.to ? [trace.from, trace.to] : [trace.to, trace.from];
  const middle = pointOnPiece(trace.piece, (low + high) / 2);
  const index = pieceIndexOfXi(chart, xiOfPlan(chart, { x: middle[0], y: middle[1] }));
  const isFlat = at(chart.pieces, index).piece.kind === "line";
  const lengthAt = (depth: number): number => {
    const speed = (s: number): number => {
      const [x, y] = pointOnPiece(trace.piece, s);
      const [dx, dy] = derivativeOnPiece(trace.piece, s);
      const place = placeOfXi(chart, xiOfPlan(chart, { x, y }), index);
      return speedOnSurface(chart, place, dx - dy * chart.tanHeading, dy, depth);
    };
    if (isFlat && trace.piece.kind === "line") return speed((low + high) / 2) * (high - low);
    return integrateWithOpenEnds(speed, low, high);
  };
  const drawnMm = lengthAt(0);
  return { drawnMm, atDepthMm: isFlat ? drawnMm : lengthAt(depthMm) };
}

/** The lengths of an upright wall's edge: over one plan curve at every depth. */
function plumbLengths(
  chart: CylinderChart,
  { piece, from, to }: Extract<EdgeTrace, { kind: "plumb" }>,
  depthMm: number,
): LengthsInSpace {
  const [low, high] = from < to ? [from, to] : [to, from];
  const lengthAt = (depth: number): number => {
    const footAt = footFinder(chart, depth);
    return integrateWithOpenEnds((t) => plumbSpeed(chart, piece, t, depth, footAt), low, high);
  };
  return { drawnMm: lengthAt(0), atDepthMm: lengthAt(depthMm) };
}

/** |dX/ds| on the surface at a depth, for dξ/ds and dy/ds: along the right section it shrinks by 1 − depth × curvature. */
function speedOnSurface(
  chart: CylinderChart,
  place: ChartPlace,
  dXi: number,
  dY: number,
  depthMm: number,
): number {
  const { speed, curvaturePerMm } = bendAtPlace(chart, place);
  const [profileXi, profileZ] = derivativeOnPiece(
    at(chart.pieces, place.index).piece,
    Math.min(1, Math.max(0, place.t)),
  );
  const dT = dXi === 0 ? 0 : dXi / profileXi;
  const alongSection = speed * dT * (1 - depthMm * curvaturePerMm);
  const alongRuling = dXi * chart.ruling.x + profileZ * dT * chart.ruling.z + dY / chart.ruling.y;
  return length2([alongSection, alongRuling]);
}

/** A fence's edge in space: chords between points lifted over the plan line, refined once and extrapolated. */
export function fenceEdgeLengthInSpace(sheet: FenceSheet, points: readonly FlatPoint[]): number {
  return chordLengths(sheet, points).reduce((total, lengthMm) => total + lengthMm, 0);
}

/** From a fence's flat coordinates into space. */
function liftOnto(sheet: FenceSheet): (p: FlatPoint) => SpacePoint {
  const pieces = sheet.chart.pieces.map(({ piece }) => piece);
  const walk = walkCurve(toCurve(pieces, false));
  return ({ u, v }) => {
    const [x, y] = walk(u).at;
    return { x, y, z: v };
  };
}

/** The lengths of the lifted straights between flat points in a row: Richardson's extrapolation over their chords. */
function chordLengths(sheet: FenceSheet, points: readonly FlatPoint[]): readonly number[] {
  const lift = liftOnto(sheet);
  let start = lift(at(points, 0));
  return points.slice(1).map((b, i) => {
    const a = at(points, i);
    const pairs = Math.max(1, Math.ceil(Math.abs(b.u - a.u) / 20));
    let fine = 0;
    let coarse = 0;
    for (let pair = 0; pair < pairs; pair++) {
      const middle = lift(between(a, b, (pair + 0.5) / pairs));
      const end = lift(between(a, b, (pair + 1) / pairs));
      fine += distanceSpace(start, middle) + distanceSpace(middle, end);
      coarse += distanceSpace(start, end);
      start = end;
    }
    return fine + (fine - coarse) / 3;
  });
}

const between = (a: FlatPoint, b: FlatPoint, t: number): FlatPoint => ({
  u: a.u + (b.u - a.u) * t,
  v: a.v + (b.v - a.v) * t,
});

/** A fence's area in space: mean height times the length of the plan line beneath, interval by interval. */
export function fenceAreaInSpace(
  sheet: FenceSheet,
  lower: readonly FlatPoint[],
  upper: readonly FlatPoint[],
): number {
  const stops = [...new Set([...lower, ...upper].map(({ u }) => u))].sort((a, b) => a - b);
  const [lowerAt, upperAt] = [heightWalker(lower), heightWalker(upper)];
  const heights = stops.map((u) => upperAt(u) - lowerAt(u));
  const lengthsMm = chordLengths(
    sheet,
    stops.map((u) => ({ u, v: 0 })),
  );
  return lengthsMm.reduce(
    (areaMm2, lengthMm, i) => areaMm2 + ((at(heights, i) + at(heights, i + 1)) / 2) * lengthMm,
    0,
  );
}

/** The height of a polyline over u, asked for at ascending u. */
function heightWalker(points: readonly FlatPoint[]): (u: number) => number {
  let after = 1;
  return (u) => {
    while (after < points.length - 1 && at(points, after).u < u) after++;
    const [a, b] = [at(points, after - 1), at(points, after)];
    return a.v + ((b.v - a.v) * (u - a.u)) / (b.u - a.u || 1);
  };
}
