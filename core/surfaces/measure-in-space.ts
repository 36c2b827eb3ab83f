import {
  type CurvePiece,
  crossingParameters,
  derivativeOnPiece,
  extremeParameters,
  pointOnPiece,
  startOfPiece,
  toCurve,
  walkCurve,
} from "../curves/index.ts";
import {
  at,
  distanceSpace,
  type FlatPoint,
  integrateWithOpenEnds,
  type SpacePoint,
} from "../foundation/index.ts";
import {
  bendAtPlace,
  type ChartPlace,
  pieceIndexOfXi,
  placeOfXi,
  profileAtPlace,
  xiOfPlan,
  xiRange,
} from "./cylinder-chart.ts";
import type { CylinderChart, FenceSheet, RegionEdge } from "./types.ts";

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
  if (!trace) {
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
  return Math.hypot(alongSection, alongRuling);
}

/**
 * The area of a region at depth `depthMm`, as it lies in space: ruling by ruling, the lengths of the rulings
 * inside the plan outline times the step between them on that surface. It never sees the flat pattern.
 */
export function areaInSpace(chart: CylinderChart, pieces: readonly CurvePiece[], depthMm: number): number {
  const shift = chart.pivotYMm * chart.tanHeading;
  const normal = [1, -chart.tanHeading] as const;
  const xiOn = (x: number, y: number) => xiOfPlan(chart, { x, y });
  const turningXis = (piece: CurvePiece): readonly number[] =>
    [0, 1, ...extremeParameters(piece, normal)].map((t) => xiOn(...pointOnPiece(piece, t)));
  const xiSpan = (piece: CurvePiece): readonly [number, number] => [
    Math.min(...turningXis(piece)),
    Math.max(...turningXis(piece)),
  ];
  const stops = pieces.flatMap(turningXis);
  const [first, last] = xiRange(chart);
  const borders = chart.pieces.map(({ piece }) => startOfPiece(piece)[0]);
  const clamped = [...stops, ...borders]
    .map((xi) => Math.min(Math.max(xi, first), last))
    .sort((a, b) => a - b);
  const spans = pieces.map((piece) => ({ piece, span: xiSpan(piece) }));
  const rulingLengthAt = (xi: number): number => {
    const ys = spans
      .filter(({ span }) => span[0] <= xi && xi <= span[1])
      .flatMap(({ piece }) =>
        crossingParameters(piece, normal, xi - shift).map((t) => pointOnPiece(piece, t)[1]),
      )
      .sort((a, b) => a - b);
    let widthMm = 0;
    for (let i = 0; i + 1 < ys.length; i += 2) widthMm += at(ys, i + 1) - at(ys, i);
    return widthMm / chart.ruling.y;
  };
  const scaleMm2 =
    (at(clamped, -1) - at(clamped, 0)) * Math.max(1, rulingLengthAt((at(clamped, 0) + at(clamped, -1)) / 2));
  let areaMm2 = 0;
  for (let i = 0; i + 1 < clamped.length; i++) {
    const [a, b] = [at(clamped, i), at(clamped, i + 1)];
    if (b - a < 1e-9) continue;
    const index = pieceIndexOfXi(chart, (a + b) / 2);
    const [from, to] = [placeOfXi(chart, a, index).t, placeOfXi(chart, b, index).t];
    areaMm2 += integrateWithOpenEnds(
      (t) => {
        const { speed, curvaturePerMm } = bendAtPlace(chart, { index, t });
        return (
          rulingLengthAt(profileAtPlace(chart, { index, t })[0]) * speed * (1 - depthMm * curvaturePerMm)
        );
      },
      from,
      to,
      scaleMm2,
    );
  }
  return areaMm2;
}

/** A fence's edge in space: chords between points lifted over the plan line, refined once and extrapolated. */
export function fenceEdgeLengthInSpace(sheet: FenceSheet, points: readonly FlatPoint[]): number {
  const lift = liftOnto(sheet);
  let total = 0;
  for (let i = 0; i + 1 < points.length; i++) total += chordLength(lift, at(points, i), at(points, i + 1));
  return total;
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

/** The length of the lifted straight between two flat points: Richardson's extrapolation over its chords. */
function chordLength(lift: (p: FlatPoint) => SpacePoint, a: FlatPoint, b: FlatPoint): number {
  const parts = Math.max(2, 2 * Math.ceil(Math.abs(b.u - a.u) / 20));
  const lifted = Array.from({ length: parts + 1 }, (_, i) => {
    const t = i / parts;
    return lift({ u: a.u + (b.u - a.u) * t, v: a.v + (b.v - a.v) * t });
  });
  let fine = 0;
  let coarse = 0;
  for (let i = 0; i < parts; i++) fine += distanceSpace(at(lifted, i), at(lifted, i + 1));
  for (let i = 0; i < parts; i += 2) coarse += distanceSpace(at(lifted, i), at(lifted, i + 2));
  return fine + (fine - coarse) / 3;
}

/** A fence's area in space: mean height times the length of the plan line beneath, interval by interval. */
export function fenceAreaInSpace(
  sheet: FenceSheet,
  lower: readonly FlatPoint[],
  upper: readonly FlatPoint[],
): number {
  const stops = [...new Set([...lower, ...upper].map(({ u }) => u))].sort((a, b) => a - b);
  const heightAt = (points: readonly FlatPoint[], u: number): number => {
    const after = Math.max(
      1,
      points.findIndex((p) => p.u >= u),
    );
    const [a, b] = [at(points, after - 1), at(points, after)];
    return a.v + ((b.v - a.v) * (u - a.u)) / (b.u - a.u || 1);
  };
  const lift = liftOnto(sheet);
  const ground = stops.map((u) => ({ u, v: 0 }));
  let areaMm2 = 0;
  for (let i = 0; i + 1 < ground.length; i++) {
    const [a, b] = [at(ground, i), at(ground, i + 1)];
    const height = (u: number) => heightAt(upper, u) - heightAt(lower, u);
    areaMm2 += ((height(a.u) + height(b.u)) / 2) * chordLength(lift, a, b);
  }
  return areaMm2;
}
