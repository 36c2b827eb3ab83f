import { derivativeOnPiece, endOfPiece, type LinePiece, startOfPiece, trimPiece } from "../curves/index.ts";
import {
  addSpace,
  at,
  lengthSpace,
  type PlanPoint,
  type SpacePoint,
  type Vec2,
} from "../foundation/index.ts";
import { cylinderChart, normalAtPlace, placeOfXi, xiOfPlan } from "./cylinder-chart.ts";
import { endlessFaceOver, type FacePoint } from "./face-height.ts";
import { polygonsContain } from "./inside-polygons.ts";
import type { CylinderChart, SectionSheet } from "./types.ts";

/** A line on the drawn surface, in plan, past which a section's foam runs on, toward its first ruling or its last. */
export interface RunningPast {
  readonly line: readonly PlanPoint[];
  readonly toward: "first" | "last";
  readonly lengthMm: number;
}

/**
 * A face of a section where its foam runs past a line: bent as drawn as far as the last ruling that meets the line, and
 * straight on from there, along the tangent, which flat foam takes by itself. Undefined beside it.
 */
export function facePast(
  sheet: SectionSheet,
  depthMm: number,
  past: RunningPast,
): (p: PlanPoint) => FacePoint | undefined {
  const chart = straightFrom(sheet.chart, past);
  const over = endlessFaceOver({ ...sheet, chart }, depthMm);
  const band = [...past.line, ...pastLine(sheet, past).toReversed()];
  return (p) => {
    const point = over(p);
    if (!point) return undefined;
    const foot = { x: p.x - depthMm * point.normal.x, y: p.y - depthMm * point.normal.y };
    return polygonsContain([band], foot) ? point : undefined;
  };
}

/** The line in plan at which foam that runs past another one ends. */
export function pastLine({ chart }: SectionSheet, past: RunningPast): readonly PlanPoint[] {
  const { x, y } = outward(chart, past);
  return past.line.map((p) => ({ x: p.x + past.lengthMm * x, y: p.y + past.lengthMm * y }));
}

const senseOf = ({ toward }: RunningPast): 1 | -1 => (toward === "last" ? 1 : -1);

/** ξ of the last ruling that meets the line. */
const lastXi = (chart: CylinderChart, past: RunningPast): number =>
  senseOf(past) * Math.max(...past.line.map((p) => senseOf(past) * xiOfPlan(chart, p)));

/** The unit vector in which the foam runs on: the tangent square to the rulings. */
function outward(chart: CylinderChart, past: RunningPast): SpacePoint {
  const normal = normalAtPlace(chart, placeOfXi(chart, lastXi(chart, past)));
  const { rearward, upward } = chart;
  const share = (axis: SpacePoint) => normal.x * axis.x + normal.y * axis.y + normal.z * axis.z;
  const along = addSpace({ x: 0, y: 0, z: 0 }, rearward, share(upward));
  const tangent = addSpace(along, upward, -share(rearward));
  return addSpace({ x: 0, y: 0, z: 0 }, tangent, senseOf(past) / lengthSpace(tangent));
}

/** The chart as far as the last ruling that meets the line, and a straight piece on from there. */
function straightFrom(chart: CylinderChart, past: RunningPast): CylinderChart {
  const isLast = past.toward === "last";
  const { index, t } = placeOfXi(chart, lastXi(chart, past));
  const share = Math.min(1, Math.max(0, t));
  const { piece } = at(chart.pieces, index);
  const pieces = chart.pieces.map((one) => one.piece);
  const isLeft = isLast ? share > 0 : share < 1;
  const cut = isLeft ? [isLast ? trimPiece(piece, 0, share) : trimPiece(piece, share, 1)] : [];
  const from = derivativeOnPiece(piece, share);
  const kept = isLast ? [...pieces.slice(0, index), ...cut] : [...cut, ...pieces.slice(index + 1)];
  const bend = kept[isLast ? kept.length - 1 : 0];
  const end = bend ? (isLast ? endOfPiece(bend) : startOfPiece(bend)) : undefined;
  if (!end) return chart;
  const straight = straightPiece(piece.edgeId, end, from, isLast ? past.lengthMm : -past.lengthMm);
  return cylinderChart(isLast ? [...kept, straight] : [straight, ...kept], {
    pivotYMm: chart.pivotYMm,
    headingRad: Math.atan(chart.tanHeading),
    tiltRad: Math.atan(chart.tanTilt),
  });
}

function straightPiece(edgeId: string, [x, z]: Vec2, [dx, dz]: Vec2, lengthMm: number): LinePiece {
  const size = Math.hypot(dx, dz);
  const far: Vec2 = [x + (dx / size) * lengthMm, z + (dz / size) * lengthMm];
  const [from, to] = lengthMm > 0 ? [[x, z] as const, far] : [far, [x, z] as const];
  return { kind: "line", edgeId, from, to };
}
