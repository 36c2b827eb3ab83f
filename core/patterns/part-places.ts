import { pointOnPiece } from "../curves/index.ts";
import { at, type FlatPoint, type SpacePoint } from "../foundation/index.ts";
import { pointOnRuled } from "../rulings/index.ts";
import {
  chartPointAt,
  type FenceSheet,
  fibreOf,
  normalAtPlace,
  type SectionSheet,
  type Sheet,
  spacePointAt,
  type TransitionSheet,
  turnAtPlace,
  uAtPlace,
} from "../surfaces/index.ts";
import { ruledPlaces } from "./ruled-places.ts";
import type { Part } from "./types.ts";

/** Where a point of a flat pattern comes to lie in the car, `depthMm` inward from the drawn surface. */
export type FlatToSpace = (flat: FlatPoint, depthMm: number) => SpacePoint;

/** Places sampled on each piece of a chart; between them the parameter is read off a straight line. */
const STEPS = 48;

/**
 * The way back from a part's flat pattern to space, for pictures and rib marks (good to some hundredths of a mm
 * on a smooth chart; lengths are never taken from it). Beyond its ends the sheet is taken to stop.
 */
export function partPlaces(sheets: readonly Sheet[], part: Part): FlatToSpace | undefined {
  const sheet = sheets.find((candidate) => candidate.id === part.sheetId);
  if (sheet === undefined) return undefined;
  const onMiddle = sheetPlaces(sheet);
  const { middleAt } = fibreOf(sheet, part.stretches);
  const right: FlatToSpace = ({ u, v }, depthMm) => onMiddle({ u: middleAt(u), v }, depthMm);
  if (part.hand !== "left") return right;
  return (flat, depthMm) => {
    const image = right({ u: flat.u, v: -flat.v }, depthMm);
    return { ...image, y: -image.y };
  };
}

function sheetPlaces(sheet: Sheet): FlatToSpace {
  switch (sheet.kind) {
    case "section":
      return sectionPlaces(sheet);
    case "fence":
      return fencePlaces(sheet);
    case "transition":
      return transitionPlaces(sheet);
  }
}

interface Sample {
  readonly flatU: number;
  readonly index: number;
  readonly t: number;
  /** v on the pivot line there. */
  readonly pivotV: number;
}

function sectionPlaces(sheet: SectionSheet): FlatToSpace {
  const { chart, depths } = sheet;
  const samples = chart.pieces.flatMap((_, index) =>
    Array.from({ length: STEPS + 1 }, (_unused, k): Sample => {
      const place = { index, t: k / STEPS };
      const flatU = uAtPlace(chart, place) - depths.neutralMm * turnAtPlace(chart, place);
      return { ...place, flatU, pivotV: chartPointAt(chart, place, chart.pivotYMm).v };
    }),
  );
  return (flat, depthMm) => {
    const place = placeAt(samples, flat.u);
    const y = chart.pivotYMm + (flat.v - place.pivotV) * chart.ruling.y;
    const surface = spacePointAt(chart, place, y, 0);
    const normal = normalAtPlace(chart, place);
    return {
      x: surface.x + normal.x * depthMm,
      y: surface.y + normal.y * depthMm,
      z: surface.z + normal.z * depthMm,
    };
  };
}

function fencePlaces(sheet: FenceSheet): FlatToSpace {
  const { pieces } = sheet.chart;
  const samples = pieces.flatMap(({ startUMm, lengthUMm, tableUMm }, index) => {
    const steps = tableUMm.length - 1;
    return tableUMm.map(
      (u, k): Sample => ({ flatU: startUMm + Math.min(u, lengthUMm), index, t: k / steps, pivotV: 0 }),
    );
  });
  return (flat) => {
    const { index, t } = placeAt(samples, flat.u);
    const [x, y] = pointOnPiece(at(pieces, index).piece, t);
    return { x, y, z: flat.v };
  };
}

function transitionPlaces(sheet: TransitionSheet): FlatToSpace {
  const placeAt = ruledPlaces(sheet);
  return (flat, depthMm) => pointOnRuled(sheet.chart.surface, placeAt(flat), depthMm);
}

/** The sample between whose neighbours u lies, its parameter read off a straight line; clamped at the ends. */
function placeAt(samples: readonly Sample[], u: number): Omit<Sample, "flatU"> {
  let [low, high] = [0, samples.length - 1];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (at(samples, middle).flatU <= u) low = middle;
    else high = middle;
  }
  const [a, b] = [at(samples, low), at(samples, high)];
  if (a.index !== b.index || b.flatU <= a.flatU) return u - a.flatU < b.flatU - u ? a : b;
  const share = Math.min(1, Math.max(0, (u - a.flatU) / (b.flatU - a.flatU)));
  return {
    index: a.index,
    t: a.t + (b.t - a.t) * share,
    pivotV: a.pivotV + (b.pivotV - a.pivotV) * share,
  };
}
