import { derivativeOnPiece, endOfPiece, pointOnPiece } from "../curves/index.ts";
import { at, type PlanPoint } from "../foundation/index.ts";
import {
  bendAtPlace,
  type ChartPlace,
  normalAtPlace,
  parameterOf,
  parameterOnArc,
  placeOfXi,
  xiOfPlan,
} from "./cylinder-chart.ts";
import type { CylinderChart } from "./types.ts";

/**
 * Finds the chart place whose normal at `depthMm` passes over a plan point. ξ of the offset surface rises with u as
 * long as the offset is smaller than the radius, which the sheet's own check ensures.
 */
export function placeFinder(chart: CylinderChart, depthMm: number): (p: PlanPoint) => ChartPlace {
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
