import { frameOnPiece, toCurve, walkCurve } from "../curves/index.ts";
import { at, bracketedRoot } from "../foundation/index.ts";
import {
  bendAtPlace,
  type ChartPlace,
  placeOfXi,
  profileAtPlace,
  turnAtPlace,
  uAtPlace,
} from "./cylinder-chart.ts";
import type { FenceSheet, SectionSheet } from "./types.ts";

/**
 * A sheet of parallel rulings seen along its bend: by the length m of the middle of its foam from its first ruling, which
 * is the flat u of a sheet that is bent whole.
 */
export interface BendLine {
  readonly lengthMm: number;
  /** How far it has turned since its first ruling: toward the inward normal, of a fence to the left; rad. */
  readonly turnAt: (middleMm: number) => number;
  /** Of the middle of the foam, in the same sense. */
  readonly curvatureAt: (middleMm: number) => number;
  /** The same place as the builder tells it: the profile's x, of a fence the length along its line. */
  readonly placeAt: (middleMm: number) => number;
  readonly middleAt: (placeMm: number) => number;
}

export const bendLine = (sheet: SectionSheet | FenceSheet): BendLine =>
  sheet.kind === "section" ? lineOfSection(sheet) : lineOfFence(sheet);

function lineOfSection(sheet: SectionSheet): BendLine {
  const { chart } = sheet;
  const placeOf = placesAtMiddle(sheet);
  return {
    lengthMm: middleAtPlace(sheet, { index: chart.pieces.length - 1, t: 1 }),
    turnAt: (middleMm) => turnAtPlace(chart, placeOf(middleMm)),
    curvatureAt: (middleMm) => {
      const { curvaturePerMm } = bendAtPlace(chart, placeOf(middleMm));
      return curvaturePerMm / (1 - sheet.depths.neutralMm * curvaturePerMm);
    },
    placeAt: (middleMm) => profileAtPlace(chart, placeOf(middleMm))[0],
    middleAt: (xi) => middleAtPlace(sheet, placeOfXi(chart, xi)),
  };
}

const middleAtPlace = ({ chart, depths }: SectionSheet, place: ChartPlace): number =>
  uAtPlace(chart, place) - depths.neutralMm * turnAtPlace(chart, place);

/** Places tabled on each piece of a chart, to begin the search from. */
const STEPS = 16;

/** Finds the place of a length along the middle of the foam, to a millionth of a mm; straight on beyond the chart's ends. */
export function placesAtMiddle(sheet: SectionSheet): (middleMm: number) => ChartPlace {
  const table = sheet.chart.pieces.flatMap((_, index) =>
    Array.from({ length: STEPS + 1 }, (_unused, k) => {
      const place = { index, t: k / STEPS };
      return { ...place, middleMm: middleAtPlace(sheet, place) };
    }),
  );
  const [first, last] = [at(table, 0), at(table, -1)];
  const beyond = ({ index, t, middleMm }: typeof first, outT: number, wantedMm: number): ChartPlace => ({
    index,
    t: t + ((wantedMm - middleMm) * (outT - t)) / (middleAtPlace(sheet, { index, t: outT }) - middleMm),
  });
  return (middleMm) => {
    if (middleMm < first.middleMm) return beyond(first, -1, middleMm);
    if (middleMm > last.middleMm) return beyond(last, 2, middleMm);
    let [low, high] = [0, table.length - 1];
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (at(table, middle).middleMm <= middleMm) low = middle;
      else high = middle;
    }
    const [a, b] = [at(table, low), at(table, high)];
    if (a.index !== b.index) return middleMm - a.middleMm < b.middleMm - middleMm ? a : b;
    const { index } = a;
    const miss = (t: number): number => middleAtPlace(sheet, { index, t }) - middleMm;
    return { index, t: bracketedRoot(miss, a.t, b.t) };
  };
}

function lineOfFence({ chart }: FenceSheet): BendLine {
  const walk = walkCurve(
    toCurve(
      chart.pieces.map(({ piece }) => piece),
      false,
    ),
  );
  const turnOnPiece = (index: number, tangent: readonly [number, number]): number => {
    const { piece } = at(chart.pieces, index);
    const [x, y] = frameOnPiece(piece, 0).tangent;
    const turn = Math.atan2(x * tangent[1] - y * tangent[0], x * tangent[0] + y * tangent[1]);
    if (piece.kind !== "arc" || Math.sign(turn) === Math.sign(piece.sweepRad)) return turn;
    return Math.abs(turn) < 1e-9 ? 0 : turn + 2 * Math.PI * Math.sign(piece.sweepRad);
  };
  const before = [0];
  for (const [index, { piece }] of chart.pieces.entries())
    before.push(at(before, index) + turnOnPiece(index, frameOnPiece(piece, 1).tangent));
  const turnAt = (middleMm: number): number => {
    let index = chart.pieces.length - 1;
    while (index > 0 && at(chart.pieces, index).startUMm > middleMm) index--;
    return at(before, index) + turnOnPiece(index, walk(middleMm).tangent);
  };
  const same = (mm: number): number => mm;
  const curvatureAt = (middleMm: number): number => walk(middleMm).curvaturePerMm;
  return { lengthMm: chart.lengthUMm, turnAt, curvatureAt, placeAt: same, middleAt: same };
}
