import {
  type ArcPiece,
  type CurvePiece,
  derivativeOnPiece,
  endOfPiece,
  pointOnPiece,
  secondDerivativeOnPiece,
  startOfPiece,
} from "../curves/index.ts";
import {
  addSpace,
  at,
  crossSpace,
  cumulate,
  type FlatPoint,
  gauss,
  length2,
  lengthSpace,
  type PlanPoint,
  type SpacePoint,
} from "../foundation/index.ts";
import type { ChartPiece, CylinderChart } from "./types.ts";

/** A place on a chart: a piece of its profile and the parameter on it (beyond 0 and 1 at the straight ends). */
export interface ChartPlace {
  readonly index: number;
  readonly t: number;
}

/**
 * The chart of a general cylinder over one smooth stretch of a profile compiled in (ξ, z), ξ rising. Rulings
 * run along (tan ψ, 1, tan τ) and pass unmoved through the pivot line. u is measured on the right section.
 */
export function cylinderChart(
  profile: readonly CurvePiece[],
  frame: { readonly pivotYMm: number; readonly headingRad: number; readonly tiltRad: number },
): CylinderChart {
  const tanHeading = Math.tan(frame.headingRad);
  const tanTilt = Math.tan(frame.tiltRad);
  const ruling = unit({ x: tanHeading, y: 1, z: tanTilt });
  const rearward = unit(addSpace({ x: 1, y: 0, z: 0 }, ruling, -ruling.x));
  const upward = crossSpace(rearward, ruling);
  const bare = { pivotYMm: frame.pivotYMm, tanHeading, tanTilt, ruling, rearward, upward };
  const pieces: ChartPiece[] = [];
  let startUMm = 0;
  for (const piece of profile) {
    const tableUMm = cumulate((t) => rightSectionSpeed(bare, piece, t));
    const lengthUMm = at(tableUMm, -1);
    pieces.push({ piece, startUMm, lengthUMm, tableUMm, isEven: isEvenSpeed(bare, piece) });
    startUMm += lengthUMm;
  }
  return { kind: "cylinder", pieces, lengthUMm: startUMm, ...bare };
}

const unit = (a: SpacePoint): SpacePoint => addSpace({ x: 0, y: 0, z: 0 }, a, 1 / lengthSpace(a));

type Frame = Pick<CylinderChart, "rearward" | "upward">;

/** The right section's velocity at t of a profile piece, in (rearward, upward). */
function rightSectionVelocity(frame: Frame, piece: CurvePiece, t: number): readonly [number, number] {
  const [dXi, dZ] = derivativeOnPiece(piece, t);
  return [frame.rearward.x * dXi + frame.rearward.z * dZ, frame.upward.x * dXi + frame.upward.z * dZ];
}

const rightSectionSpeed = (frame: Frame, piece: CurvePiece, t: number): number =>
  length2(rightSectionVelocity(frame, piece, t));

/** Lines are even, and so are arcs as long as the right section is the profile itself. */
const isEvenSpeed = (frame: Pick<CylinderChart, "tanHeading" | "tanTilt">, piece: CurvePiece): boolean =>
  piece.kind === "line" || (piece.kind === "arc" && frame.tanHeading === 0 && frame.tanTilt === 0);

/** u at a place of the chart; beyond the ends the surface goes on straight. */
export function uAtPlace(chart: CylinderChart, place: ChartPlace): number {
  const { piece, startUMm, lengthUMm, tableUMm, isEven } = at(chart.pieces, place.index);
  const { t } = place;
  if (isEven) return startUMm + t * lengthUMm;
  if (t <= 0) return startUMm + t * rightSectionSpeed(chart, piece, 0);
  if (t >= 1) return startUMm + at(tableUMm, -1) + (t - 1) * rightSectionSpeed(chart, piece, 1);
  const steps = tableUMm.length - 1;
  const step = Math.min(Math.floor(t * steps), steps - 1);
  return startUMm + at(tableUMm, step) + gauss((s) => rightSectionSpeed(chart, piece, s), step / steps, t);
}

/** The direction of the right section at a place: angle from `rearward` toward `upward`, rad. */
export function directionAtPlace(chart: CylinderChart, place: ChartPlace): number {
  const [along, up] = rightSectionVelocity(chart, at(chart.pieces, place.index).piece, clamp01(place.t));
  return Math.atan2(up, along);
}

/** The angle that the surface has turned toward its inward normal since u = 0, rad. */
export const turnAtPlace = (chart: CylinderChart, place: ChartPlace): number =>
  directionAtPlace(chart, place) - directionAtPlace(chart, { index: 0, t: 0 });

/**
 * Speed du/dt and curvature of the right section at a place; curvature is positive where the surface turns
 * toward its inward normal, and 0 on the straight ends.
 */
export function bendAtPlace(
  chart: CylinderChart,
  place: ChartPlace,
): { readonly speed: number; readonly curvaturePerMm: number } {
  const { piece } = at(chart.pieces, place.index);
  const t = clamp01(place.t);
  const [a, b] = rightSectionVelocity(chart, piece, t);
  const speed = length2([a, b]);
  if (t !== place.t || piece.kind === "line") return { speed, curvaturePerMm: 0 };
  const [ddXi, ddZ] = secondDerivativeOnPiece(piece, t);
  const da = chart.rearward.x * ddXi + chart.rearward.z * ddZ;
  const db = chart.upward.x * ddXi + chart.upward.z * ddZ;
  return { speed, curvaturePerMm: (a * db - b * da) / (speed * speed * speed) };
}

const clamp01 = (t: number): number => Math.min(1, Math.max(0, t));

/** The inward unit normal at a place. */
export function normalAtPlace(chart: CylinderChart, place: ChartPlace): SpacePoint {
  const { rearward, upward } = chart;
  const [along, up] = rightSectionVelocity(chart, at(chart.pieces, place.index).piece, clamp01(place.t));
  const speed = length2([along, up]);
  const [sine, cosine] = [up / speed, along / speed];
  return {
    x: cosine * upward.x - sine * rearward.x,
    y: cosine * upward.y - sine * rearward.y,
    z: cosine * upward.z - sine * rearward.z,
  };
}

/** The profile point (ξ, z) at a place, straight beyond the ends. */
export function profileAtPlace(chart: CylinderChart, place: ChartPlace): readonly [number, number] {
  const { piece } = at(chart.pieces, place.index);
  const t = clamp01(place.t);
  const point = pointOnPiece(piece, t);
  if (t === place.t) return point;
  const [dXi, dZ] = derivativeOnPiece(piece, t);
  return [point[0] + (place.t - t) * dXi, point[1] + (place.t - t) * dZ];
}

/** ξ of a plan point: where its ruling passes the pivot line. */
export const xiOfPlan = (chart: Pick<CylinderChart, "pivotYMm" | "tanHeading">, p: PlanPoint): number =>
  p.x - (p.y - chart.pivotYMm) * chart.tanHeading;

/** The drawn surface's height above a plan point whose place is known. */
export const heightAtPlace = (chart: CylinderChart, place: ChartPlace, yMm: number): number =>
  profileAtPlace(chart, place)[1] + (yMm - chart.pivotYMm) * chart.tanTilt;

/** v of a plan point whose place is known: its distance along the rulings from the plane square to them. */
export function vAtPlace(chart: CylinderChart, place: ChartPlace, yMm: number): number {
  const [xi, z] = profileAtPlace(chart, place);
  const along = (yMm - chart.pivotYMm) / chart.ruling.y;
  return xi * chart.ruling.x + chart.pivotYMm * chart.ruling.y + z * chart.ruling.z + along;
}

/** Chart point of a plan point whose place is known. */
export const chartPointAt = (chart: CylinderChart, place: ChartPlace, yMm: number): FlatPoint => ({
  u: uAtPlace(chart, place),
  v: vAtPlace(chart, place, yMm),
});

/** The piece that holds ξ (its left piece at a border); the first and last go on beyond the ends. */
export function pieceIndexOfXi(chart: CylinderChart, xi: number): number {
  let [low, high] = [0, chart.pieces.length - 1];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (xi <= endOfPiece(at(chart.pieces, middle).piece)[0]) high = middle;
    else low = middle + 1;
  }
  return low;
}

/** The place of ξ on one piece of the chart; beyond the chart's ends along its straight continuation. */
export function placeOfXi(chart: CylinderChart, xi: number, index = pieceIndexOfXi(chart, xi)): ChartPlace {
  const { piece } = at(chart.pieces, index);
  if (piece.kind === "line") return { index, t: (xi - piece.from[0]) / (piece.to[0] - piece.from[0]) };
  if (piece.kind === "arc") return { index, t: parameterOnArc(piece, xi, 0) };
  return { index, t: parameterOf((t) => [pointOnPiece(piece, t)[0], derivativeOnPiece(piece, t)[0]], xi) };
}

/**
 * The parameter of an arc whose first coordinate rises, where its offset to the left by `depthMm` reaches ξ;
 * straight beyond its ends.
 */
export function parameterOnArc(arc: ArcPiece, xi: number, depthMm: number): number {
  const side = Math.sign(arc.sweepRad);
  const radius = arc.radiusMm - side * depthMm;
  const xiAt = (angle: number) => arc.centre[0] + radius * Math.cos(angle);
  const endRad = arc.startRad + arc.sweepRad;
  for (const [t, angle] of [
    [0, arc.startRad],
    [1, endRad],
  ] as const) {
    const isBeyond = t === 0 ? xi <= xiAt(angle) : xi >= xiAt(angle);
    const slope = -radius * Math.sin(angle) * arc.sweepRad;
    if (isBeyond) return slope > 1e-12 * radius ? t + (xi - xiAt(angle)) / slope : t;
  }
  // Rising counter-clockwise, an arc lies below its centre (angles -π to 0); clockwise, above it.
  const below = Math.acos(Math.min(1, Math.max(-1, (xi - arc.centre[0]) / radius)));
  const turns = 2 * Math.PI;
  const raw = -side * below - arc.startRad;
  const swept = raw - turns * Math.round((raw - arc.sweepRad / 2) / turns);
  return Math.min(1, Math.max(0, swept / arc.sweepRad));
}

/** After a step of Newton's this small the next one would be rounding: it goes with the square. */
const LAST_STEP = 1e-12;

/** The parameter where a rising function reaches a value: Newton kept inside a bracket, straight beyond 0 and 1. */
export function parameterOf(
  f: (t: number) => readonly [value: number, slope: number],
  target: number,
): number {
  const [start, startSlope] = f(0);
  if (target <= start) return startSlope > 0 ? (target - start) / startSlope : 0;
  const [end, endSlope] = f(1);
  if (target >= end) return endSlope > 0 ? 1 + (target - end) / endSlope : 1;
  let [low, high] = [0, 1];
  let t = (target - start) / (end - start);
  for (let i = 0; i < 60; i++) {
    const [value, slope] = f(t);
    const step = (target - value) / slope;
    if (Math.abs(step) <= LAST_STEP) return t + step;
    if (value < target) low = t;
    else high = t;
    const newton = t + step;
    t = newton > low && newton < high ? newton : (low + high) / 2;
  }
  return t;
}

/** A point in space at depth `depthMm` inward from the drawn surface, above the ruling through ξ, y on it. */
export function spacePointAt(
  chart: CylinderChart,
  place: ChartPlace,
  yMm: number,
  depthMm: number,
): SpacePoint {
  const [xi, z] = profileAtPlace(chart, place);
  const across = yMm - chart.pivotYMm;
  const surface = { x: xi + across * chart.tanHeading, y: yMm, z: z + across * chart.tanTilt };
  return depthMm === 0 ? surface : addSpace(surface, normalAtPlace(chart, place), depthMm);
}

/** ξ at the first and last ruling of a chart. */
export const xiRange = (chart: CylinderChart): readonly [number, number] => [
  startOfPiece(at(chart.pieces, 0).piece)[0],
  endOfPiece(at(chart.pieces, -1).piece)[0],
];
