import { at } from "../foundation/index.ts";
import { worstBetween } from "./simplify-top.ts";
import type { TopPoint } from "./top-stretches.ts";
import type { RibHeight } from "./types.ts";

export interface HeightSettings {
  readonly intervalMm: number;
  readonly toleranceMm: number;
  readonly thicknessMm: number;
  /** Height on the jig of a height above ground. */
  readonly heightOf: (zMm: number) => number;
  /** Height above ground of the resting face, or of its continuation, over the rib's far face. */
  readonly farZMm: (point: TopPoint) => number;
}

const LEAST_INTERVAL_MM = 10;

/**
 * Heights to mark a rib out by: at both ends, at every interval of the car's own coordinate, on both sides of
 * every border between parts, and wherever joining them straight would miss by more than the tolerance.
 */
export function ribHeights(top: readonly TopPoint[], settings: HeightSettings): RibHeight[] {
  const { heightOf, farZMm, thicknessMm } = settings;
  return chosenPoints(top, settings).map((point): RibHeight => {
    const { atMm, zMm, partId } = point;
    const stationFaceMm = heightOf(zMm);
    const farFaceMm = heightOf(farZMm(point));
    const bevelRad = Math.atan2(farFaceMm - stationFaceMm, thicknessMm);
    return { atMm, stationFaceMm, farFaceMm, bevelRad, partId };
  });
}

function chosenPoints(top: readonly TopPoint[], { intervalMm, toleranceMm }: HeightSettings): TopPoint[] {
  const stepMm = intervalMm > LEAST_INTERVAL_MM ? intervalMm : LEAST_INTERVAL_MM;
  const withStations = insertStations(top, stepMm);
  const isStation = ({ atMm }: TopPoint) => Math.abs(atMm / stepMm - Math.round(atMm / stepMm)) < 1e-9;
  const line = withStations.map(({ atMm, zMm }) => ({ u: atMm, v: zMm }));
  const chosen: number[] = [];
  for (const [i, point] of withStations.entries()) {
    const isEnd = i === 0 || i === withStations.length - 1;
    const isBorder =
      withStations[i - 1]?.partId !== point.partId || withStations[i + 1]?.partId !== point.partId;
    if (!isEnd && !isBorder && !isStation(point)) continue;
    const before = chosen[chosen.length - 1];
    if (before !== undefined) chosen.push(...needed(line, before, i, Math.max(toleranceMm, 0.05)));
    chosen.push(i);
  }
  return chosen.map((i) => at(withStations, i));
}

/** The top with a point on every multiple of the step, read off between its neighbours. */
function insertStations(top: readonly TopPoint[], stepMm: number): TopPoint[] {
  return top.flatMap((point, i) => {
    const before = top[i - 1];
    if (before === undefined || before.partId !== point.partId) return [point];
    const stations: TopPoint[] = [];
    for (let k = Math.floor(before.atMm / stepMm) + 1; k * stepMm < point.atMm - 1e-9; k++) {
      if (k * stepMm <= before.atMm + 1e-9) continue;
      const share = (k * stepMm - before.atMm) / (point.atMm - before.atMm);
      const zMm = before.zMm + share * (point.zMm - before.zMm);
      stations.push({ ...point, atMm: k * stepMm, zMm });
    }
    return [...stations, point];
  });
}

function needed(
  line: readonly { readonly u: number; readonly v: number }[],
  from: number,
  to: number,
  toleranceMm: number,
): number[] {
  const { index, missMm } = worstBetween(line, from, to);
  if (missMm <= toleranceMm) return [];
  return [...needed(line, from, index, toleranceMm), index, ...needed(line, index, to, toleranceMm)];
}
