import {
  type CurvePiece,
  crossingParameters,
  extremeParameters,
  pointOnPiece,
  startOfPiece,
} from "../curves/index.ts";
import { at, integrateWithOpenEnds, type Vec2 } from "../foundation/index.ts";
import {
  bendAtPlace,
  pieceIndexOfXi,
  placeOfXi,
  profileAtPlace,
  xiOfPlan,
  xiRange,
} from "./cylinder-chart.ts";
import type { CylinderChart } from "./types.ts";

/** A piece of the plan outline and the ξ that it spans. */
interface Spanned {
  readonly piece: CurvePiece;
  readonly from: number;
  readonly to: number;
}

/**
 * The area of a region at depth `depthMm`, as it lies in space: ruling by ruling, the lengths of the rulings
 * inside the plan outline times the step between them on that surface. It never sees the flat pattern. The sweep
 * goes band by band between the places where a piece of the outline or of the profile begins, ends or turns.
 */
export function areaInSpace(chart: CylinderChart, pieces: readonly CurvePiece[], depthMm: number): number {
  const spanned = pieces.map((piece) => spanOf(chart, piece));
  const stops = bandStops(chart, pieces);
  const scaleMm2 =
    (at(stops, -1) - at(stops, 0)) *
    Math.max(1, rulingLengthAt(chart, spanned, (at(stops, -1) + at(stops, 0)) / 2));
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
      return rulingLengthAt(chart, crossed, xi) * speed * (1 - depthMm * curvaturePerMm);
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

const isStraight = ({ piece }: Spanned): boolean => piece.kind === "line";

const rulingNormal = (chart: CylinderChart): Vec2 => [1, -chart.tanHeading];

function turningXis(chart: CylinderChart, piece: CurvePiece): readonly number[] {
  return [0, 1, ...extremeParameters(piece, rulingNormal(chart))].map((t) => {
    const [x, y] = pointOnPiece(piece, t);
    return xiOfPlan(chart, { x, y });
  });
}

function spanOf(chart: CylinderChart, piece: CurvePiece): Spanned {
  const xis = turningXis(chart, piece);
  return { piece, from: Math.min(...xis), to: Math.max(...xis) };
}

/** Where the bands begin and end, ascending, inside the chart. */
function bandStops(chart: CylinderChart, pieces: readonly CurvePiece[]): readonly number[] {
  const [first, last] = xiRange(chart);
  const borders = chart.pieces.map(({ piece }) => startOfPiece(piece)[0]);
  return [...pieces.flatMap((piece) => turningXis(chart, piece)), ...borders]
    .map((xi) => Math.min(Math.max(xi, first), last))
    .sort((a, b) => a - b);
}

/** How much of a ruling lies inside the outline, mm: the crossings sorted, inside from first to second, … */
function rulingLengthAt(chart: CylinderChart, spanned: readonly Spanned[], xi: number): number {
  const offset = xi - chart.pivotYMm * chart.tanHeading;
  const ys: number[] = [];
  for (const { piece, from, to } of spanned) {
    if (xi < from || xi > to) continue;
    for (const t of crossingParameters(piece, rulingNormal(chart), offset))
      ys.push(pointOnPiece(piece, t)[1]);
  }
  ys.sort((a, b) => a - b);
  let widthMm = 0;
  for (let i = 0; i + 1 < ys.length; i += 2) widthMm += at(ys, i + 1) - at(ys, i);
  return widthMm / chart.ruling.y;
}
