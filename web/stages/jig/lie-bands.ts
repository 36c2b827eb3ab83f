import { at } from "../../../core/foundation/index.ts";
import type { LieLine, LieStation } from "../../../core/jig/index.ts";

/** A stretch of a line between two ribs, or beyond the last: its stations, and the one that lies farthest off. */
export interface LieBand {
  readonly fromMm: number;
  readonly toMm: number;
  readonly stations: readonly LieStation[];
  readonly worst: LieStation;
}

/** The station that lies farthest off its shape. */
export const worstStation = (stations: readonly LieStation[]): LieStation | undefined =>
  stations.reduce<LieStation | undefined>(
    (worst, one) => (worst && Math.abs(worst.errorMm) >= Math.abs(one.errorMm) ? worst : one),
    undefined,
  );

/** The stations of a line with those where it runs past its trim lines. */
export const allStations = ({ stations, past }: LieLine): readonly LieStation[] =>
  [...stations, ...past].toSorted((a, b) => a.alongMm - b.alongMm);

/** The stretches of a line from rib to rib, or trim line. */
export function lieBands({ stations, ribsMm }: LieLine): readonly LieBand[] {
  const [firstMm, lastMm] = [at(stations, 0).alongMm, at(stations, -1).alongMm];
  // A rib past a trim line holds foam that is not judged.
  const borders = [firstMm, ...ribsMm.filter((mm) => mm > firstMm && mm < lastMm), lastMm];
  return borders.slice(1).flatMap((toMm, i): LieBand[] => {
    const fromMm = at(borders, i);
    const own = stations.filter(({ alongMm }) => alongMm >= fromMm - 1e-6 && alongMm <= toMm + 1e-6);
    const worst = worstStation(own);
    return worst && toMm - fromMm > 1 ? [{ fromMm, toMm, stations: own, worst }] : [];
  });
}
