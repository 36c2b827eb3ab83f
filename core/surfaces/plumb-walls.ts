import { type CurvePiece, derivativeOnPiece, pointOnPiece } from "../curves/index.ts";
import {
  addSpace,
  at,
  crossSpace,
  length2,
  lengthSpace,
  type PlanPoint,
  type SpacePoint,
  type Vec2,
} from "../foundation/index.ts";
import {
  bendAtPlace,
  type ChartPlace,
  directionAtPlace,
  normalAtPlace,
  placeOfXi,
  profileAtPlace,
  xiOfPlan,
} from "./cylinder-chart.ts";
import type { FibreRate } from "./fibre.ts";
import { placeFinder } from "./place-finder.ts";
import type { CylinderChart } from "./types.ts";

/** A foot on the drawn surface: the normal there passes a depth over a plan point. */
export interface Foot {
  readonly place: ChartPlace;
  readonly xi: number;
  readonly y: number;
}

/**
 * Finds the foot of a plumb wall: its place on the drawn surface whose normal at `depthMm` passes over a plan point,
 * so that the face at that depth has its edge over the plan curve of the wall. At depth 0 the foot is that point.
 */
export function footFinder(chart: CylinderChart, depthMm: number): (p: PlanPoint) => Foot {
  if (depthMm === 0) {
    return (p) => {
      const xi = xiOfPlan(chart, p);
      return { place: placeOfXi(chart, xi), xi, y: p.y };
    };
  }
  const placeUnder = placeFinder(chart, depthMm);
  return (p) => {
    const place = placeUnder(p);
    const [xi] = profileAtPlace(chart, place);
    return { place, xi, y: p.y - depthMm * normalAtPlace(chart, place).y };
  };
}

/** How far, in ξ, a face at a depth lies ahead of its foot. */
export function xiShift(chart: CylinderChart, place: ChartPlace, depthMm: number): number {
  if (depthMm === 0) return 0;
  const normal = normalAtPlace(chart, place);
  return depthMm * (normal.x - normal.y * chart.tanHeading);
}

/** The velocity of a foot on the drawn surface, as its plan point moves by (dx, dy). */
export interface FootVelocity {
  readonly dXi: number;
  readonly dY: number;
  /** Along the right section of the drawn surface. */
  readonly dU: number;
  /** How the normal turns. */
  readonly turn: SpacePoint;
}

/**
 * How the foot moves: ξ of the face at the depth changes by 1 − depth × curvature times that of the foot, and the
 * normal turns toward the front by curvature times the way along the right section.
 */
export function footVelocity(
  chart: CylinderChart,
  place: ChartPlace,
  [dx, dy]: Vec2,
  depthMm: number,
): FootVelocity {
  const { speed, curvaturePerMm } = bendAtPlace(chart, place);
  const dXi = (dx - dy * chart.tanHeading) / (1 - depthMm * curvaturePerMm);
  const profileXi = profileSlope(chart, place)[0];
  const dU = dXi === 0 ? 0 : (speed * dXi) / profileXi;
  const angleRad = directionAtPlace(chart, place);
  const along = addSpace(
    addSpace(ORIGIN, chart.rearward, Math.cos(angleRad)),
    chart.upward,
    Math.sin(angleRad),
  );
  const turn = addSpace(ORIGIN, along, -curvaturePerMm * dU);
  return { dXi, dY: dy - depthMm * turn.y, dU, turn };
}

const ORIGIN: SpacePoint = { x: 0, y: 0, z: 0 };

const profileSlope = (chart: CylinderChart, place: ChartPlace): Vec2 =>
  derivativeOnPiece(at(chart.pieces, place.index).piece, Math.min(1, Math.max(0, place.t)));

/**
 * How fast the edge of a plumb wall runs in space, by the parameter of its plan curve: where the wall meets the face at a
 * depth, along a fibre that goes by its own rate.
 */
export function plumbSpeed(
  chart: CylinderChart,
  piece: CurvePiece,
  t: number,
  { depthMm, rateAt }: { readonly depthMm: number; readonly rateAt: FibreRate["rateAt"] },
  footAt: (p: PlanPoint) => Foot,
): number {
  const [x, y] = pointOnPiece(piece, t);
  const { place } = footAt({ x, y });
  const { dXi, dY, dU } = footVelocity(chart, place, derivativeOnPiece(piece, t), depthMm);
  const { speed, curvaturePerMm } = bendAtPlace(chart, place);
  const alongRuling =
    dXi * chart.ruling.x +
    (profileSlope(chart, place)[1] * dU * chart.ruling.z) / speed +
    dY / chart.ruling.y;
  return length2([dU * rateAt(profileAtPlace(chart, place)[0], curvaturePerMm), alongRuling]);
}

/**
 * The bevel of a plumb wall off square to its sheet, rad, where its edge runs along (dx, dy) in plan with the sheet on
 * its left: positive leaves the air face longer.
 */
export function plumbBevelRad(chart: CylinderChart, place: ChartPlace, [dx, dy]: Vec2): number {
  const normal = normalAtPlace(chart, place);
  const along = { x: dx, y: dy, z: -(normal.x * dx + normal.y * dy) / normal.z };
  const inward = crossSpace(normal, along);
  return Math.atan2(inward.z / (lengthSpace(inward) || 1), normal.z);
}
