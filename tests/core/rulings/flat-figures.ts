import type { Development, RuledSurface } from "../../../core/rulings/index.ts";

export interface Flat {
  readonly u: number;
  readonly v: number;
}

export const distance = (p: Flat, q: Flat): number => Math.hypot(p.u - q.u, p.v - q.v);

/** Points of the flat curve of constant t, `perStretch` chords between two stops of the sheet. */
export function flatCurve(
  sheet: RuledSurface,
  flat: Development,
  t: number,
  perStretch = 40,
): readonly Flat[] {
  const inside = sheet.stretches.flatMap(({ fromMm, toMm }) =>
    Array.from({ length: perStretch }, (_, k) =>
      flat.flatAt({ sMm: fromMm + ((toMm - fromMm) * k) / perStretch, t }),
    ),
  );
  return [...inside, flat.flatAt({ sMm: sheet.lengthSMm, t })];
}

export const chordLength = (points: readonly Flat[]): number =>
  points.slice(1).reduce((sum, point, k) => sum + distance(point, points[k] ?? point), 0);

/** Length of a flat curve from two chord sums: their errors fall fourfold, so the limit is one third beyond (Richardson). */
export function flatLength(sheet: RuledSurface, flat: Development, t: number): number {
  const [coarse, fine] = [20, 40].map((count) => chordLength(flatCurve(sheet, flat, t, count)));
  return (fine ?? 0) + ((fine ?? 0) - (coarse ?? 0)) / 3;
}

/** Signed area of the flat outline (positive counter-clockwise), by the shoelace rule, extrapolated likewise. */
export function flatArea(
  sheet: RuledSurface,
  flat: Development,
  [t0, t1]: readonly [number, number] = [0, 1],
): number {
  const [coarse, fine] = [20, 40].map((count) =>
    shoelace([...flatCurve(sheet, flat, t0, count), ...[...flatCurve(sheet, flat, t1, count)].reverse()]),
  );
  return (fine ?? 0) + ((fine ?? 0) - (coarse ?? 0)) / 3;
}

export function shoelace(points: readonly Flat[]): number {
  return points.reduce((sum, p, k) => {
    const q = points[(k + 1) % points.length] ?? p;
    return sum + (p.u * q.v - q.u * p.v) / 2;
  }, 0);
}

/** The largest difference between distances within two sets of points: 0 for congruent (or mirrored) sets. */
export function shapeDifference(a: readonly Flat[], b: readonly Flat[]): number {
  let worst = 0;
  for (let i = 0; i < a.length; i++)
    for (let j = 0; j < i; j++) {
      const [p, q, r, s] = [a[i], a[j], b[i], b[j]];
      if (p && q && r && s) worst = Math.max(worst, Math.abs(distance(p, q) - distance(r, s)));
    }
  return worst;
}
