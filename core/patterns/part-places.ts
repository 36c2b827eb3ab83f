import { pointOnPiece } from "../curves/index.ts";
import { at, type FlatPoint, type SpacePoint } from "../foundation/index.ts";
import { developRuled, pointOnRuled } from "../rulings/index.ts";
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

/** A ruling of one strip in the flat, and where it stands in the sweep. */
interface FlatRung {
  readonly sMm: number;
  readonly from: FlatPoint;
  readonly to: FlatPoint;
}

/** Rulings are looked up among so many, and between two of them by straight interpolation. */
const RUNGS = 160;

function transitionPlaces(sheet: TransitionSheet): FlatToSpace {
  const { surface } = sheet.chart;
  const ladders = sheet.strips.map(({ shares, shift }) => {
    const { flatAt } = developRuled(surface, sheet.depths.neutralMm, shares);
    const place = (sMm: number, t: number): FlatPoint => {
      const { u, v } = flatAt({ sMm, t });
      return { u: u + shift.u, v: v + shift.v };
    };
    const rungs = Array.from({ length: RUNGS + 1 }, (_, i): FlatRung => {
      const sMm = (surface.lengthSMm * i) / RUNGS;
      return { sMm, from: place(sMm, shares[0]), to: place(sMm, shares[1]) };
    });
    return { shares, rungs };
  });
  return (flat, depthMm) => {
    const tries = ladders.map(({ shares, rungs }) => {
      const { sMm, share, outsideMm } = rungAt(rungs, flat);
      return { sMm, t: shares[0] + (shares[1] - shares[0]) * share, outsideMm };
    });
    const { sMm, t } = tries.reduce((best, one) => (one.outsideMm < best.outsideMm ? one : best));
    return pointOnRuled(surface, { sMm, t }, depthMm);
  };
}

/** Between which rungs a flat point lies, where along them, and how far off the strip. */
function rungAt(
  rungs: readonly FlatRung[],
  p: FlatPoint,
): { readonly sMm: number; readonly share: number; readonly outsideMm: number } {
  const beside = ({ from, to }: FlatRung) =>
    ((to.u - from.u) * (p.v - from.v) - (to.v - from.v) * (p.u - from.u)) /
    (Math.hypot(to.u - from.u, to.v - from.v) || 1);
  const along = ({ from, to }: FlatRung) => {
    const square = (to.u - from.u) ** 2 + (to.v - from.v) ** 2;
    return square === 0 ? 0 : ((to.u - from.u) * (p.u - from.u) + (to.v - from.v) * (p.v - from.v)) / square;
  };
  let best = { sMm: 0, share: 0, outsideMm: Number.POSITIVE_INFINITY };
  for (let i = 1; i < rungs.length; i++) {
    const [a, b] = [at(rungs, i - 1), at(rungs, i)];
    const [da, db] = [beside(a), beside(b)];
    const part = da === db ? 0 : Math.min(1, Math.max(0, da / (da - db)));
    const rung = {
      sMm: a.sMm + (b.sMm - a.sMm) * part,
      from: mix(a.from, b.from, part),
      to: mix(a.to, b.to, part),
    };
    const share = along(rung);
    const within = Math.min(1, Math.max(0, share));
    const foot = mix(rung.from, rung.to, within);
    const outsideMm = Math.hypot(p.u - foot.u, p.v - foot.v);
    if (outsideMm < best.outsideMm) best = { sMm: rung.sMm, share: within, outsideMm };
  }
  return best;
}

const mix = (a: FlatPoint, b: FlatPoint, part: number): FlatPoint => ({
  u: a.u + (b.u - a.u) * part,
  v: a.v + (b.v - a.v) * part,
});

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
