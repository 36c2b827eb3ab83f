import { derivativeOnPiece, endOfPiece, pointOnPiece } from "../curves/index.ts";
import { at, dotSpace, type PlanPoint, type SpacePoint } from "../foundation/index.ts";
import {
  bendAtPlace,
  type ChartPlace,
  heightAtPlace,
  normalAtPlace,
  parameterOf,
  parameterOnArc,
  placeOfXi,
  xiOfPlan,
} from "./cylinder-chart.ts";
import { insideOf, polygonsContain } from "./inside-polygons.ts";
import type { CylinderChart, EndPlane, SectionSheet } from "./types.ts";

/** A place on a face over a plan point, with the inward normal there. */
export type FacePoint = SpacePoint & { readonly normal: SpacePoint };

/**
 * Height above ground of a sheet's face that lies `depthMm` inward from the drawn surface, over a plan point of
 * the right or whole hand; undefined where the sheet is not. The face ends square under the drawn edge, and at a
 * profile corner on the mitre plane.
 */
export function faceHeightAt(sheet: SectionSheet, depthMm: number, p: PlanPoint): number | undefined {
  return facePointAt(sheet, depthMm, p)?.z;
}

/** As `faceHeightAt`, with the inward normal there. */
export function facePointAt(sheet: SectionSheet, depthMm: number, p: PlanPoint): FacePoint | undefined {
  return lookFor(sheet, depthMm, (foot) => polygonsContain(sheet.planLoops, foot))(p);
}

/** A face made ready for many look-ups: as `facePointAt`. */
export function faceOver(sheet: SectionSheet, depthMm: number): (p: PlanPoint) => FacePoint | undefined {
  return lookFor(sheet, depthMm, insideOf(sheet.planLoops));
}

/**
 * A face as it would go on past the edges of its sheet: the chart's own surface at that depth, wherever asked. Used
 * where a joint fills the wedge between faces that end square.
 */
export function endlessFaceOver(sheet: SectionSheet, depthMm: number): (p: PlanPoint) => FacePoint {
  const placeUnder = placeFinder(sheet.chart, depthMm);
  return (p) => facePointUnder(sheet.chart, placeUnder(p), depthMm, p);
}

function facePointUnder(chart: CylinderChart, place: ChartPlace, depthMm: number, p: PlanPoint): FacePoint {
  const normal = normalAtPlace(chart, place);
  const footY = p.y - depthMm * normal.y;
  return { x: p.x, y: p.y, z: heightAtPlace(chart, place, footY) + depthMm * normal.z, normal };
}

function lookFor(
  { chart, planBox, ends }: SectionSheet,
  depthMm: number,
  isInside: (foot: PlanPoint) => boolean,
): (p: PlanPoint) => FacePoint | undefined {
  const [least, most] = planBox;
  const reach = Math.abs(depthMm);
  const placeUnder = placeFinder(chart, depthMm);
  return (p) => {
    if (p.x < least.x - reach || p.x > most.x + reach) return undefined;
    if (p.y < least.y - reach || p.y > most.y + reach) return undefined;
    const point = facePointUnder(chart, placeUnder(p), depthMm, p);
    if (!isInside({ x: p.x - depthMm * point.normal.x, y: p.y - depthMm * point.normal.y })) return undefined;
    return ends.some((end) => isBeyond(end, point)) ? undefined : point;
  };
}

const isBeyond = ({ origin, toward }: EndPlane, { x, y, z }: SpacePoint): boolean =>
  dotSpace({ x: x - origin.x, y: y - origin.y, z: z - origin.z }, toward) > 1e-9;

/** Whether a plan point of the right or whole hand lies on the drawn surface of the sheet. */
export const sheetContains = (sheet: SectionSheet, p: PlanPoint): boolean =>
  facePointAt(sheet, 0, p) !== undefined;

/**
 * Finds the chart place whose normal at `depthMm` passes over a plan point. ξ of the offset surface rises with u as
 * long as the offset is smaller than the radius, which the sheet's own check ensures.
 */
function placeFinder(chart: CylinderChart, depthMm: number): (p: PlanPoint) => ChartPlace {
  if (depthMm === 0) return (p) => placeOfXi(chart, xiOfPlan(chart, p));
  const shift = (place: ChartPlace): number => {
    const normal = normalAtPlace(chart, place);
    return depthMm * (normal.x - normal.y * chart.tanHeading);
  };
  const slope = shiftSlope(chart, depthMm);
  const starts = chart.pieces.map((_, index) => shift({ index, t: 0 }));
  const ends = chart.pieces.map(({ piece }, index) => endOfPiece(piece)[0] + shift({ index, t: 1 }));
  const last = chart.pieces.length - 1;
  return (p) => {
    const target = xiOfPlan(chart, p);
    let index = 0;
    while (index < last && target > at(ends, index)) index++;
    const { piece } = at(chart.pieces, index);
    if (piece.kind === "line") return placeOfXi(chart, target - at(starts, index), index);
    if (piece.kind === "arc" && chart.tanHeading === 0 && chart.tanTilt === 0) {
      return { index, t: parameterOnArc(piece, target, depthMm) };
    }
    const t = parameterOf((s) => {
      const place = { index, t: s };
      return [pointOnPiece(piece, s)[0] + shift(place), derivativeOnPiece(piece, s)[0] * slope(place)];
    }, target);
    return { index, t };
  };
}

/** dξ of the offset surface over dξ of the drawn one: 1 − depth × curvature. */
const shiftSlope =
  (chart: CylinderChart, depthMm: number) =>
  (place: ChartPlace): number =>
    1 - depthMm * bendAtPlace(chart, place).curvaturePerMm;
