import { addSpace, at, bracketedRoot, crossSpace, type FlatPoint } from "../foundation/index.ts";
import {
  type ChartPlace,
  chartPointAt,
  normalAtPlace,
  type SectionSheet,
  spacePointAt,
  turnAtPlace,
  uAtPlace,
} from "../surfaces/index.ts";
import { flatChartedLie } from "./flat-charted-lie.ts";
import type { FlatRimPoint } from "./rim-of-loop.ts";
import { turnSteps } from "./turn-steps.ts";
import type { ChartSpot, SheetLie } from "./types.ts";

/** Places tabled on each piece of a chart, to begin the search for u from. */
const STEPS = 16;

/** How a section's flat lies in space: its chart is the flat itself, stations are rulings. */
export function sectionLie(sheet: SectionSheet, rims: readonly (readonly FlatRimPoint[])[]): SheetLie {
  const { chart } = sheet;
  const placeAt = placesByFlatU(sheet);
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

/** Finds the place of a flat u, to a millionth of a mm; straight on beyond the chart's ends. */
function placesByFlatU(sheet: SectionSheet): (flatU: number) => ChartPlace {
  const table = sheet.chart.pieces.flatMap((_, index) =>
    Array.from({ length: STEPS + 1 }, (_unused, k) => {
      const place = { index, t: k / STEPS };
      return { ...place, flatU: flatUAt(sheet, place) };
    }),
  );
  const [first, last] = [at(table, 0), at(table, -1)];
  const beyond = ({ index, t, flatU }: typeof first, outT: number, wantedU: number): ChartPlace => ({
    index,
    t: t + ((wantedU - flatU) * (outT - t)) / (flatUAt(sheet, { index, t: outT }) - flatU),
  });
  return (flatU) => {
    if (flatU < first.flatU) return beyond(first, -1, flatU);
    if (flatU > last.flatU) return beyond(last, 2, flatU);
    let [low, high] = [0, table.length - 1];
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (at(table, middle).flatU <= flatU) low = middle;
      else high = middle;
    }
    const [a, b] = [at(table, low), at(table, high)];
    if (a.index !== b.index) return flatU - a.flatU < b.flatU - flatU ? a : b;
    const { index } = a;
    const miss = (t: number): number => flatUAt(sheet, { index, t }) - flatU;
    return { index, t: bracketedRoot(miss, a.t, b.t) };
  };
}
