import { at, bracketedRoot } from "../foundation/index.ts";
import { intervalAt, pairingAt } from "./pairing-at.ts";
import { STRETCH_POINTS } from "./stretch-points.ts";
import { SWEEP_NUMBERS, sweepRoom, sweepRuling } from "./sweep-ruling.ts";
import type { PairedEdges, PairingNode, SweptStretch } from "./types.ts";

/** Stops nearer than this are one. */
const ONE_STOP_MM = 1e-6;

/** The sheet between its stops, swept once for all quadratures. */
export function sweepStretches(paired: PairedEdges): readonly SweptStretch[] {
  const stops = stopsOf(paired);
  const room = sweepRoom();
  const sweeps = new Float64Array((stops.length - 1) * STRETCH_POINTS.length * SWEEP_NUMBERS);
  let o = 0;
  return stops.slice(1).map((toMm, index) => {
    const fromMm = at(stops, index);
    const interval = intervalAt(paired, (fromMm + toMm) / 2);
    const offset = o;
    for (const x of STRETCH_POINTS) {
      sweepRuling(paired, fromMm + x * (toMm - fromMm), interval, { out: sweeps, o, room });
      o += SWEEP_NUMBERS;
    }
    return { fromMm, toMm, interval, sweeps, offset };
  });
}

/** Every ruling, and every border of pieces on either edge. */
function stopsOf(paired: PairedEdges): readonly number[] {
  const { rulings, first, second } = paired;
  const own = rulings.map(({ sMm }) => sMm);
  const onFirst = first.bordersMm.map((mm) => crossingOf(paired, "firstMm", mm));
  const onSecond = second.bordersMm.map((mm) => crossingOf(paired, "secondMm", mm));
  const borders = [...onFirst, ...onSecond].flat().filter((sMm) => sMm > 0 && sMm < paired.lengthSMm);
  const sorted = [
    ...own.map((sMm) => ({ sMm, isOwn: true })),
    ...borders.map((sMm) => ({ sMm, isOwn: false })),
  ].sort((a, b) => a.sMm - b.sMm);
  return sorted.flatMap(({ sMm, isOwn }, k) => {
    const isNear = (other: number | undefined) => other !== undefined && Math.abs(other - sMm) < ONE_STOP_MM;
    return !isOwn && (isNear(sorted[k - 1]?.sMm) || isNear(sorted[k + 1]?.sMm)) ? [] : [sMm];
  });
}

/** Where the sweep passes a place of one edge, between two rulings; none where it rests there in a fan. */
function crossingOf(paired: PairedEdges, key: "firstMm" | "secondMm", mm: number): readonly number[] {
  const { rulings } = paired;
  let [low, high] = [0, rulings.length - 1];
  while (low + 1 < high) {
    const middle = (low + high) >> 1;
    if (at(rulings, middle)[key] <= mm) low = middle;
    else high = middle;
  }
  const [from, to]: readonly [PairingNode, PairingNode] = [at(rulings, low), at(rulings, high)];
  if (!(from[key] < mm && mm < to[key])) return [];
  return [bracketedRoot((sMm) => pairingAt(paired, low, sMm)[key] - mm, from.sMm, to.sMm)];
}
