import { crossingParameters, extremeParameters, pointOnPiece, startOfPiece } from "../curves/index.ts";
import { at, integrateWithOpenEnds, type PlanPoint, type Vec2 } from "../foundation/index.ts";
import {
  bendAtPlace,
  type ChartPlace,
  normalAtPlace,
  pieceIndexOfXi,
  placeOfXi,
  profileAtPlace,
  xiOfPlan,
  xiRange,
} from "./cylinder-chart.ts";
import { type FibreStretch, fibreRate } from "./fibre.ts";
import { type Foot, footFinder, xiShift } from "./plumb-walls.ts";
import type { BorderPiece, CylinderChart, SectionSheet } from "./types.ts";

/** A piece of the plan outline and the ξ that its feet span. */
interface Spanned extends BorderPiece {
  readonly from: number;
  readonly to: number;
}

/**
 * The area of a region on the fibre that keeps its length, as it lies in space: ruling by ruling, the lengths of the rulings
 * inside the plan outline times the step between them on that surface. Where an edge is upright it lies over its plan
 * curve at the middle of the foam. It never sees the flat pattern. The sweep
 * goes band by band between the places where a piece of the outline or of the profile begins, ends or turns.
 */
export function areaInSpace(
  sheet: SectionSheet,
  borders: readonly BorderPiece[],
  stretches: readonly FibreStretch[],
): number {
  const { chart } = sheet;
  const depthMm = sheet.depths.neutralMm;
  const { bordersXi, rateAt } = fibreRate(sheet, stretches);
  const footUnder = footFinder(chart, depthMm);
  const turns = borders.map((border) => turningXis(chart, border, footUnder));
  const spanned = borders.map(
    (border, i): Spanned => ({ ...border, from: Math.min(...at(turns, i)), to: Math.max(...at(turns, i)) }),
  );
  const stops = bandStops(chart, [...turns.flat(), ...bordersXi.filter(isSpanned(turns.flat()))]);
  const middleXi = (at(stops, -1) + at(stops, 0)) / 2;
  const middlePlace = placeOfXi(chart, middleXi);
  const scaleMm2 =
    (at(stops, -1) - at(stops, 0)) *
    Math.max(1, rulingLengthAt(chart, spanned, rulingAt(chart, middlePlace, middleXi, depthMm)));
  const rising = spanned.toSorted((a, b) => a.from - b.from);
  let begun = 0;
  let crossed: readonly Spanned[] = [];
  let areaMm2 = 0;
  for (let i = 0; i + 1 < stops.length; i++) {
    const [a, b] = [at(stops, i), at(stops, i + 1)];
    if (b - a < 1e-9) continue;
    const middle = (a + b) / 2;
    const index = pieceIndexOfXi(chart, middle);
    const earlier = begun;
    while (begun < rising.length && at(rising, begun).from <= middle) begun++;
    crossed = [...crossed, ...rising.slice(earlier, begun)].filter(({ to }) => middle <= to);
    const stepAt = (t: number): number => {
      const { speed, curvaturePerMm } = bendAtPlace(chart, { index, t });
      const xi = profileAtPlace(chart, { index, t })[0];
      const ruling = rulingAt(chart, { index, t }, xi, depthMm);
      return rulingLengthAt(chart, crossed, ruling) * speed * rateAt(xi, curvaturePerMm);
    };
    const [from, to] = [placeOfXi(chart, a, index).t, placeOfXi(chart, b, index).t];
    // Between straight edges on a flat stretch the rulings grow evenly.
    const isEven = at(chart.pieces, index).piece.kind === "line" && crossed.every(isStraight);
    areaMm2 += isEven
      ? stepAt((from + to) / 2) * (to - from)
      : integrateWithOpenEnds(stepAt, from, to, scaleMm2);
  }
  return areaMm2;
}

/** Beyond the outline there is nothing to measure. */
const isSpanned = (xis: readonly number[]) => {
  const [least, most] = [Math.min(...xis), Math.max(...xis)];
  return (xi: number): boolean => xi > least && xi < most;
};

const isStraight = ({ piece }: Spanned): boolean => piece.kind === "line";

const rulingNormal = (chart: CylinderChart): Vec2 => [1, -chart.tanHeading];

function turningXis(
  chart: CylinderChart,
  { piece, wall }: BorderPiece,
  footUnder: (p: PlanPoint) => Foot,
): readonly number[] {
  return [0, 1, ...extremeParameters(piece, rulingNormal(chart))].map((t) => {
    const [x, y] = pointOnPiece(piece, t);
    return wall === "upright" ? footUnder({ x, y }).xi : xiOfPlan(chart, { x, y });
  });
}

/** Where the bands begin and end, ascending, inside the chart. */
function bandStops(chart: CylinderChart, turningXis: readonly number[]): readonly number[] {
  const [first, last] = xiRange(chart);
  const borders = chart.pieces.map(({ piece }) => startOfPiece(piece)[0]);
  return [...turningXis, ...borders].map((xi) => Math.min(Math.max(xi, first), last)).sort((a, b) => a - b);
}

/** A ruling: its feet lie at ξ, and the face at the depth lies ahead of them by the shifts. */
interface Ruling {
  readonly xi: number;
  readonly xiShift: number;
  readonly yShift: number;
}

const rulingAt = (chart: CylinderChart, place: ChartPlace, xi: number, depthMm: number): Ruling => ({
  xi,
  xiShift: xiShift(chart, place, depthMm),
  yShift: depthMm * normalAtPlace(chart, place).y,
});

/** How much of a ruling lies inside the outline, mm: the crossings sorted, inside from first to second, … */
function rulingLengthAt(chart: CylinderChart, spanned: readonly Spanned[], ruling: Ruling): number {
  const { xi } = ruling;
  const offset = xi - chart.pivotYMm * chart.tanHeading;
  const ys: number[] = [];
  for (const { piece, wall, from, to } of spanned) {
    if (xi < from || xi > to) continue;
    const [ahead, aside] = wall === "upright" ? [ruling.xiShift, ruling.yShift] : [0, 0];
    for (const t of crossingParameters(piece, rulingNormal(chart), offset + ahead))
      ys.push(pointOnPiece(piece, t)[1] - aside);
  }
  ys.sort((a, b) => a - b);
  let widthMm = 0;
  for (let i = 0; i + 1 < ys.length; i += 2) widthMm += at(ys, i + 1) - at(ys, i);
  return widthMm / chart.ruling.y;
}
