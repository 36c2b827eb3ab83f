import { at, bracketedRoot } from "../foundation/index.ts";
import { bendLine } from "./bend-line.ts";
import type { SectionSheet, Sheet } from "./types.ts";

/**
 * A stretch of a sheet whose length is not kept in the middle of its foam: slots keep that of the web that they leave,
 * planks are flats. Between `fromMm` and `toMm`, along the middle of the foam from the first ruling, the flat is as long as
 * the fibre `offsetMm` from the middle (toward the inward normal, of a fence to the left of its line), times `scale`.
 */
export interface FibreStretch {
  readonly fromMm: number;
  readonly toMm: number;
  readonly offsetMm: number;
  readonly scale: number;
}

/** From the middle of the foam to the flat pattern along u, and back; both rise. */
export interface Fibre {
  readonly flatAt: (middleMm: number) => number;
  readonly middleAt: (flatUMm: number) => number;
}

const WHOLE: Fibre = { flatAt: (mm) => mm, middleAt: (mm) => mm };

/**
 * The fibre that keeps its length when a sheet is bent, stretch by stretch: continuous, rising, and exact where the
 * middle of the foam is (by the turn between two places, without quadrature). A transition is bent whole.
 */
export function fibreOf(sheet: Sheet, stretches: readonly FibreStretch[] | undefined): Fibre {
  if (sheet.kind === "transition" || !stretches || stretches.length === 0) return WHOLE;
  const { turnAt } = bendLine(sheet);
  const grownIn = ({ fromMm, offsetMm, scale }: FibreStretch, middleMm: number): number =>
    scale * (middleMm - fromMm - (offsetMm === 0 ? 0 : offsetMm * (turnAt(middleMm) - turnAt(fromMm))));
  const starts: number[] = [];
  const ends: number[] = [];
  for (const [i, stretch] of stretches.entries()) {
    const before = stretches[i - 1];
    starts.push(before ? at(ends, -1) + stretch.fromMm - before.toMm : stretch.fromMm);
    ends.push(at(starts, -1) + grownIn(stretch, stretch.toMm));
  }
  /** The last stretch that begins at or before a place, by the places where they begin. */
  const lastBefore = (places: readonly number[], mm: number): number => {
    let i = places.length - 1;
    while (i >= 0 && at(places, i) > mm) i--;
    return i;
  };
  const froms = stretches.map(({ fromMm }) => fromMm);
  return {
    flatAt: (middleMm) => {
      const i = lastBefore(froms, middleMm);
      if (i < 0) return middleMm;
      const stretch = at(stretches, i);
      return middleMm >= stretch.toMm
        ? at(ends, i) + middleMm - stretch.toMm
        : at(starts, i) + grownIn(stretch, middleMm);
    },
    middleAt: (flatUMm) => {
      const i = lastBefore(starts, flatUMm);
      if (i < 0) return flatUMm;
      const stretch = at(stretches, i);
      const { fromMm, toMm, offsetMm, scale } = stretch;
      if (flatUMm >= at(ends, i)) return toMm + flatUMm - at(ends, i);
      const grown = flatUMm - at(starts, i);
      if (offsetMm === 0) return fromMm + grown / scale;
      return bracketedRoot((middleMm) => grownIn(stretch, middleMm) - grown, fromMm, toMm);
    },
  };
}

/** How the fibre of a section runs beside its drawn surface, told by ξ. */
export interface FibreRate {
  /** Where one stretch gives way to the next, ascending. */
  readonly bordersXi: readonly number[];
  /** Length on the fibre for length on the drawn surface, along the right section. */
  readonly rateAt: (xi: number, curvaturePerMm: number) => number;
}

/** On the middle of the foam 1 − depth × curvature; in a stretch of its own its own depth and scale. */
export function fibreRate(sheet: SectionSheet, stretches: readonly FibreStretch[]): FibreRate {
  const depthMm = sheet.depths.neutralMm;
  if (stretches.length === 0)
    return { bordersXi: [], rateAt: (_xi, curvaturePerMm) => 1 - depthMm * curvaturePerMm };
  const { placeAt } = bendLine(sheet);
  const placed = stretches.map((stretch) => ({
    ...stretch,
    fromXi: placeAt(stretch.fromMm),
    toXi: placeAt(stretch.toMm),
  }));
  return {
    bordersXi: [...new Set(placed.flatMap(({ fromXi, toXi }) => [fromXi, toXi]))].sort((a, b) => a - b),
    rateAt: (xi, curvaturePerMm) => {
      const own = placed.find(({ fromXi, toXi }) => xi > fromXi && xi < toXi);
      return (own?.scale ?? 1) * (1 - (depthMm + (own?.offsetMm ?? 0)) * curvaturePerMm);
    },
  };
}
