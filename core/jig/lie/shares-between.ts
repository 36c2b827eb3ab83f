import { at } from "../../foundation/index.ts";
import type { LieSettings } from "../../project/index.ts";
import { judgeLine } from "./judge-line.ts";
import { layLane } from "./lay-lane.ts";
import type { Lane, LaneSupport } from "./types.ts";

/** A coarse look misses the very worst place by less than this share. */
const MISSED = 0.03;
/** Asked for where foam lies on one rib or none. */
const NOT_HELD = 1000;
/** Lanes that are alike to this at both ends are one, mm. */
const ALIKE_MM = 1;

/** Places are felt so many places on: each turns what comes round and takes three quarters of it. */
const FELT_PLACES = 3;

/** Stretches that are asked about: from the one that begins at one place to the one that ends at another. */
export interface Window {
  readonly from: number;
  readonly to: number;
}

/** What lanes ask for between places of ribs: by the number of the place that a stretch begins at, the most of any lane. */
export function sharesBetween(
  lanes: readonly Lane[],
  placesMm: readonly number[],
  settings: LieSettings,
  window: Window = { from: 0, to: placesMm.length - 1 },
): ReadonlyMap<number, number> {
  const most = new Map<number, number>();
  const offer = (index: number, share: number) => {
    const clamped = Math.min(placesMm.length - 2, Math.max(0, index));
    if (clamped >= window.from && clamped < window.to)
      most.set(clamped, Math.max(most.get(clamped) ?? 0, share));
  };
  for (const lane of lanes) {
    const [fromMm, toMm] = [at(lane.places, 0).placeMm, at(lane.places, -1).placeMm];
    if (toMm < at(placesMm, window.from) || fromMm > at(placesMm, window.to)) continue;
    const under = placesMm.flatMap((placeMm, i) => (placeMm >= fromMm && placeMm <= toMm ? [i] : []));
    const felt = under.filter((i) => i >= window.from - FELT_PLACES && i <= window.to + FELT_PLACES);
    const supports = felt.map((i): LaneSupport => ({ ribId: `${i}`, placeMm: at(placesMm, i), liftMm: 0 }));
    const hangsFree = [
      lane.hangsFree[0] && felt[0] === under[0],
      lane.hangsFree[1] && felt[felt.length - 1] === under[under.length - 1],
    ] as const;
    const line = layLane({ ...lane, hangsFree }, supports, settings, "coarse");
    if (!line) {
      const index = placesMm.findIndex((mm) => mm >= fromMm);
      offer((index < 0 ? placesMm.length : index) - 1, NOT_HELD);
      continue;
    }
    const first = Number(at(line.ribIds, 0));
    for (const [i, { share }] of judgeLine(line, settings.toleranceMm).entries())
      offer(first + i - 1, share * (1 + MISSED));
  }
  return most;
}

/** Lanes without those that lie as another does: on a level floor all of them are alike. */
export function unlikeLanes(lanes: readonly Lane[]): readonly Lane[] {
  return lanes.filter((lane, i) => !lanes.slice(0, i).some((other) => isAlike(lane, other)));
}

function isAlike(a: Lane, b: Lane): boolean {
  if (a.partId !== b.partId || a.hangsFree.some((is, i) => is !== b.hangsFree[i])) return false;
  const [from, to] = [at(a.places, 0), at(a.places, -1)];
  const [otherFrom, otherTo] = [at(b.places, 0), at(b.places, -1)];
  if (
    Math.abs(from.placeMm - otherFrom.placeMm) > ALIKE_MM ||
    Math.abs(to.placeMm - otherTo.placeMm) > ALIKE_MM
  )
    return false;
  return [0.25, 0.5, 0.75, 1].every((share) => {
    const spot = ({ places }: Lane) => at(places, Math.round(share * (places.length - 1)));
    return (
      Math.abs(spot(a).forcedMm - spot(b).forcedMm) < ALIKE_MM / 10 &&
      Math.abs(spot(a).alongMm - spot(b).alongMm) < ALIKE_MM
    );
  });
}
