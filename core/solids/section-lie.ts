import { addSpace, crossSpace, type FlatPoint } from "../foundation/index.ts";
import {
  type ChartPlace,
  chartPointAt,
  normalAtPlace,
  placesAtMiddle,
  type SectionSheet,
  spacePointAt,
  turnAtPlace,
  uAtPlace,
} from "../surfaces/index.ts";
import { flatChartedLie } from "./flat-charted-lie.ts";
import type { FlatRimPoint } from "./rim-of-loop.ts";
import { turnSteps } from "./turn-steps.ts";
import type { ChartSpot, SheetLie } from "./types.ts";

/** How a section's flat lies in space: its chart is the flat itself, stations are rulings. */
export function sectionLie(sheet: SectionSheet, rims: readonly (readonly FlatRimPoint[])[]): SheetLie {
  const { chart } = sheet;
  const placeAt = placesAtMiddle(sheet);
  const stationsMm = chart.pieces.flatMap(({ piece }, index) => {
    const [from, to] = [flatUAt(sheet, { index, t: 0 }), flatUAt(sheet, { index, t: 1 })];
    if (piece.kind === "line") return [from, to];
    const turnRad = turnAtPlace(chart, { index, t: 1 }) - turnAtPlace(chart, { index, t: 0 });
    return turnSteps(from, to, turnRad);
  });
  const spaceAt = ({ along, across }: ChartSpot, { u, v }: FlatPoint, depthMm: number) => {
    const place = placeAt(along + u);
    const y = chart.pivotYMm + (across + v - chartPointAt(chart, place, chart.pivotYMm).v) * chart.ruling.y;
    return spacePointAt(chart, place, y, depthMm);
  };
  return flatChartedLie(sheet, rims, {
    stationsMm,
    spaceAt,
    axesAt: (along) => {
      const normal = normalAtPlace(chart, placeAt(along));
      return {
        alongU: crossSpace(chart.ruling, normal),
        alongV: addSpace({ x: 0, y: 0, z: 0 }, chart.ruling),
        normal,
      };
    },
  });
}

const flatUAt = ({ chart, depths }: SectionSheet, place: ChartPlace): FlatPoint["u"] =>
  uAtPlace(chart, place) - depths.neutralMm * turnAtPlace(chart, place);
