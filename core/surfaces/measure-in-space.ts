import { derivativeOnPiece, pointOnPiece, toCurve, walkCurve } from "../curves/index.ts";
import {
  at,
  bracketedRoot,
  distanceSpace,
  type FlatPoint,
  integrateWithOpenEnds,
  length2,
  type SpacePoint,
} from "../foundation/index.ts";
import {
  bendAtPlace,
  type ChartPlace,
  pieceIndexOfXi,
  placeOfXi,
  profileAtPlace,
  xiOfPlan,
} from "./cylinder-chart.ts";
import { type FibreRate, type FibreStretch, fibreRate } from "./fibre.ts";
import { footFinder, plumbSpeed } from "./plumb-walls.ts";
import type { CylinderChart, EdgeTrace, FenceSheet, RegionEdge, SectionSheet } from "./types.ts";

/** An edge's length in space on the drawn surface, and on the fibre that keeps its length when the sheet is bent. */
export interface LengthsInSpace {
  readonly drawnMm: number;
  readonly atDepthMm: number;
}

/**
 * The lengths in space of a traced edge, drawn and on the fibre that keeps its length: the speed along
 * the plan curve on that surface, by quadrature. An edge without a trace is a ruling and has its own length.
 */
export function edgeLengthsInSpace(
  sheet: SectionSheet,
  edge: RegionEdge,
  stretches: readonly FibreStretch[],
): LengthsInSpace {
  const { chart } = sheet;
  const { trace } = edge;
  const fibre = fibreRate(sheet, stretches);
  if (trace?.kind === "plumb") return plumbLengths(sheet, trace, fibre);
  if (trace?.kind !== "plan") {
    const lengthMm = Math.abs(at(edge.points, -1).v - at(edge.points, 0).v);
    return { drawnMm: lengthMm, atDepthMm: lengthMm };
  }
  const [low, high] = trace.from < trace.to ? [trace.from, trace.to] : [trace.to, trace.from];
  const middle = pointOnPiece(trace.piece, (low + high) / 2);
  const index = pieceIndexOfXi(chart, xiOfPlan(chart, { x: middle[0], y: middle[1] }));
  const isFlat = at(chart.pieces, index).piece.kind === "line";
  const xiAt = (s: number): number => {
    const [x, y] = pointOnPiece(trace.piece, s);
    return xiOfPlan(chart, { x, y });
  };
  const lengthBy = ({ bordersXi, rateAt }: FibreRate): number => {
    const speed = (s: number): number => {
      const [dx, dy] = derivativeOnPiece(trace.piece, s);
      const place = placeOfXi(chart, xiAt(s), index);
      return speedOnSurface(chart, place, dx - dy * chart.tanHeading, dy, rateAt);
    };
    if (isFlat && trace.piece.kind === "line") return speed((low + high) / 2) * (high - low);
    return integrateBetween(speed, [low, ...crossings(xiAt, bordersXi, low, high), high]);
  };
  const drawnMm = lengthBy(ON_DRAWN);
  return { drawnMm, atDepthMm: isFlat ? drawnMm : lengthBy(fibre) };
}

/** The drawn surface itself. */
const ON_DRAWN: FibreRate = { bordersXi: [], rateAt: () => 1 };

/** A smooth function over stretches that follow each other. */
const integrateBetween = (f: (t: number) => number, stops: readonly number[]): number =>
  stops.slice(1).reduce((sum, to, i) => sum + integrateWithOpenEnds(f, at(stops, i), to), 0);

/** Steps in which a curve is looked at for where it passes a ruling. */
const LOOKS = 32;

/** Where a curve passes rulings, by its parameter, ascending. */
function crossings(
  xiAt: (s: number) => number,
  xis: readonly number[],
  low: number,
  high: number,
): readonly number[] {
  if (xis.length === 0) return [];
  const stops = Array.from({ length: LOOKS + 1 }, (_, i) => low + ((high - low) * i) / LOOKS);
  const values = stops.map(xiAt);
  const found = xis.flatMap((xi) =>
    stops.slice(1).flatMap((to, i): readonly number[] => {
      const [a, b] = [at(values, i) - xi, at(values, i + 1) - xi];
      return a < 0 === b < 0 ? [] : [bracketedRoot((s) => xiAt(s) - xi, at(stops, i), to)];
    }),
  );
  return found.sort((a, b) => a - b);
}

/** The lengths of an upright wall's edge: over one plan curve at every depth. */
function plumbLengths(
  { chart, depths }: SectionSheet,
  { piece, from, to }: Extract<EdgeTrace, { kind: "plumb" }>,
  fibre: FibreRate,
): LengthsInSpace {
  const [low, high] = from < to ? [from, to] : [to, from];
  const lengthAt = (depthMm: number, { bordersXi, rateAt }: FibreRate): number => {
    const footAt = footFinder(chart, depthMm);
    const xiAt = (t: number): number => {
      const [x, y] = pointOnPiece(piece, t);
      return footAt({ x, y }).xi;
    };
    const speed = (t: number) => plumbSpeed(chart, piece, t, { depthMm, rateAt }, footAt);
    return integrateBetween(speed, [low, ...crossings(xiAt, bordersXi, low, high), high]);
  };
  return { drawnMm: lengthAt(0, ON_DRAWN), atDepthMm: lengthAt(depths.neutralMm, fibre) };
}

/** |dX/ds| on a surface beside the drawn one, for dξ/ds and dy/ds: along the right section it goes by that surface's rate. */
function speedOnSurface(
  chart: CylinderChart,
  place: ChartPlace,
  dXi: number,
  dY: number,
  rateAt: FibreRate["rateAt"],
): number {
  const { speed, curvaturePerMm } = bendAtPlace(chart, place);
  const [profileXi, profileZ] = derivativeOnPiece(
    at(chart.pieces, place.index).piece,
    Math.min(1, Math.max(0, place.t)),
  );
  const dT = dXi === 0 ? 0 : dXi / profileXi;
  const alongSection = speed * dT * rateAt(profileAtPlace(chart, place)[0], curvaturePerMm);
  const alongRuling = dXi * chart.ruling.x + profileZ * dT * chart.ruling.z + dY / chart.ruling.y;
  return length2([alongSection, alongRuling]);
}

/**
 * A fence's edge in space, on its middle and on the fibre that keeps its length: chords between points lifted over the
 * plan line, refined once and extrapolated.
 */
export function fenceEdgeLengthInSpace(
  sheet: FenceSheet,
  points: readonly FlatPoint[],
  stretches: readonly FibreStretch[],
): LengthsInSpace {
  const sumOf = (lengths: readonly number[]) => lengths.reduce((total, lengthMm) => total + lengthMm, 0);
  const drawnMm = sumOf(chordLengths(sheet, points, []));
  if (stretches.length === 0) return { drawnMm, atDepthMm: drawnMm };
  const broken = breakAt(points, bordersOfStretches(stretches));
  return { drawnMm, atDepthMm: sumOf(chordLengths(sheet, broken, stretches)) };
}

const bordersOfStretches = (stretches: readonly FibreStretch[]): readonly number[] =>
  [...new Set(stretches.flatMap(({ fromMm, toMm }) => [fromMm, toMm]))].sort((a, b) => a - b);

/** A flat line with a point of its own wherever it passes one of some u. */
function breakAt(points: readonly FlatPoint[], us: readonly number[]): readonly FlatPoint[] {
  return points.flatMap((b, i) => {
    const a = points[i - 1];
    if (!a) return [b];
    const passed = us.filter((u) => (u - a.u) * (u - b.u) < 0);
    const shares = passed.map((u) => (u - a.u) / (b.u - a.u)).sort((one, other) => one - other);
    return [...shares.map((share) => between(a, b, share)), b];
  });
}

/** From a fence's flat coordinates into space, beside its middle. */
function liftOnto(sheet: FenceSheet): (p: FlatPoint, offsetMm: number) => SpacePoint {
  const pieces = sheet.chart.pieces.map(({ piece }) => piece);
  const walk = walkCurve(toCurve(pieces, false));
  return ({ u, v }, offsetMm) => {
    const {
      at: [x, y],
      tangent: [dx, dy],
    } = walk(u);
    return { x: x - dy * offsetMm, y: y + dx * offsetMm, z: v };
  };
}

/**
 * The lengths of the lifted straights between flat points in a row: Richardson's extrapolation over their chords. Each
 * straight lies in one stretch; on planks its way along the line counts by their scale.
 */
function chordLengths(
  sheet: FenceSheet,
  points: readonly FlatPoint[],
  stretches: readonly FibreStretch[],
): readonly number[] {
  const lift = liftOnto(sheet);
  return points.slice(1).map((b, i) => {
    const a = at(points, i);
    const middleU = (a.u + b.u) / 2;
    const own = stretches.find(({ fromMm, toMm }) => middleU > fromMm && middleU < toMm);
    const [offsetMm, scale] = [own?.offsetMm ?? 0, own?.scale ?? 1];
    const chord = (from: SpacePoint, to: SpacePoint): number =>
      scale === 1
        ? distanceSpace(from, to)
        : Math.hypot(scale * length2([to.x - from.x, to.y - from.y]), to.z - from.z);
    const pairs = Math.max(1, Math.ceil(Math.abs(b.u - a.u) / 20));
    let start = lift(a, offsetMm);
    let fine = 0;
    let coarse = 0;
    for (let pair = 0; pair < pairs; pair++) {
      const middle = lift(between(a, b, (pair + 0.5) / pairs), offsetMm);
      const end = lift(between(a, b, (pair + 1) / pairs), offsetMm);
      fine += chord(start, middle) + chord(middle, end);
      coarse += chord(start, end);
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
  stretches: readonly FibreStretch[],
): number {
  const [first, last] = [at(lower, 0).u, at(lower, -1).u];
  const borders = bordersOfStretches(stretches).filter((u) => u > first && u < last);
  const stops = [...new Set([...[...lower, ...upper].map(({ u }) => u), ...borders])].sort((a, b) => a - b);
  const [lowerAt, upperAt] = [heightWalker(lower), heightWalker(upper)];
  const heights = stops.map((u) => upperAt(u) - lowerAt(u));
  const lengthsMm = chordLengths(
    sheet,
    stops.map((u) => ({ u, v: 0 })),
    stretches,
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
