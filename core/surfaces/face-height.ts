import { derivativeOnPiece, pointOnPiece } from "../curves/index.ts";
import { at, dotSpace, type PlanPoint, type SpacePoint } from "../foundation/index.ts";
import {
  bendAtPlace,
  type ChartPlace,
  normalAtPlace,
  parameterOf,
  parameterOnArc,
  placeOfXi,
  spacePointAt,
  xiOfPlan,
} from "./cylinder-chart.ts";
import type { CylinderChart, SectionSheet } from "./types.ts";

/**
 * Height above ground of a sheet's face that lies `depthMm` inward from the drawn surface, over a plan point of
 * the right or whole hand; undefined where the sheet is not. The face ends square under the drawn edge, and at a
 * profile corner on the mitre plane.
 */
export function faceHeightAt(sheet: SectionSheet, depthMm: number, p: PlanPoint): number | undefined {
  return facePointAt(sheet, depthMm, p)?.z;
}

/** As `faceHeightAt`, with the inward normal there. */
export function facePointAt(
  sheet: SectionSheet,
  depthMm: number,
  p: PlanPoint,
): (SpacePoint & { readonly normal: SpacePoint }) | undefined {
  const { chart, planBox } = sheet;
  const reach = Math.abs(depthMm);
  if (p.x < planBox[0].x - reach || p.x > planBox[1].x + reach) return undefined;
  if (p.y < planBox[0].y - reach || p.y > planBox[1].y + reach) return undefined;
  const place = placeUnder(chart, depthMm, p);
  const normal = normalAtPlace(chart, place);
  const foot = { x: p.x - depthMm * normal.x, y: p.y - depthMm * normal.y };
  if (!polygonsContain(sheet.planLoops, foot)) return undefined;
  const { z } = spacePointAt(chart, place, foot.y, depthMm);
  const point = { x: p.x, y: p.y, z };
  const isBeyond = sheet.ends.some(
    ({ origin, toward }) =>
      dotSpace({ x: point.x - origin.x, y: point.y - origin.y, z: point.z - origin.z }, toward) > 1e-9,
  );
  return isBeyond ? undefined : { ...point, normal };
}

/** Whether a plan point of the right or whole hand lies on the drawn surface of the sheet. */
export const sheetContains = (sheet: SectionSheet, p: PlanPoint): boolean =>
  facePointAt(sheet, 0, p) !== undefined;

/**
 * The chart place whose normal at `depthMm` passes over a plan point. ξ of the offset surface rises with u as
 * long as the offset is smaller than the radius, which the sheet's own check ensures.
 */
function placeUnder(chart: CylinderChart, depthMm: number, p: PlanPoint): ChartPlace {
  const target = xiOfPlan(chart, p);
  if (depthMm === 0) return placeOfXi(chart, target);
  const shift = (place: ChartPlace): number => {
    const normal = normalAtPlace(chart, place);
    return depthMm * (normal.x - normal.y * chart.tanHeading);
  };
  const last = chart.pieces.length - 1;
  let index = 0;
  while (
    index < last &&
    target > at(pointOnPiece(at(chart.pieces, index).piece, 1), 0) + shift({ index, t: 1 })
  )
    index++;
  const { piece } = at(chart.pieces, index);
  if (piece.kind === "line") return placeOfXi(chart, target - shift({ index, t: 0 }), index);
  if (piece.kind === "arc" && chart.tanHeading === 0 && chart.tanTilt === 0) {
    return { index, t: parameterOnArc(piece, target, depthMm) };
  }
  const slope = shiftSlope(chart, depthMm);
  const t = parameterOf((s) => {
    const place = { index, t: s };
    return [pointOnPiece(piece, s)[0] + shift(place), derivativeOnPiece(piece, s)[0] * slope(place)];
  }, target);
  return { index, t };
}

/** dξ of the offset surface over dξ of the drawn one: 1 − depth × curvature. */
const shiftSlope =
  (chart: CylinderChart, depthMm: number) =>
  (place: ChartPlace): number =>
    1 - depthMm * bendAtPlace(chart, place).curvaturePerMm;

/** Even-odd test of a point against polygons; a point on the border may fall either way. */
export function polygonsContain(polygons: readonly (readonly PlanPoint[])[], p: PlanPoint): boolean {
  let inside = false;
  for (const polygon of polygons) {
    let before = polygon[polygon.length - 1];
    for (const corner of polygon) {
      if (before && corner.y > p.y !== before.y > p.y) {
        const x = before.x + ((p.y - before.y) / (corner.y - before.y)) * (corner.x - before.x);
        if (p.x < x) inside = !inside;
      }
      before = corner;
    }
  }
  return inside;
}
