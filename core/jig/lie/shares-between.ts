import { at } from "../../foundation/index.ts";
import type { LieSettings } from "../../project/index.ts";
import { num, type QuickLane, readAt, stepFrom } from "./quick-lane.ts";
import { quickShares } from "./quick-shares.ts";
import type { Lane } from "./types.ts";

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
  lanes: readonly QuickLane[],
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
  for (const quick of lanes) {
    const { lane, placeMm } = quick;
    const [fromMm, toMm] = [num(placeMm, 0), num(placeMm, placeMm.length - 1)];
    if (toMm < at(placesMm, window.from) || fromMm > at(placesMm, window.to)) continue;
    let [least, past] = [0, placesMm.length];
    while (least < past && at(placesMm, least) < fromMm) least++;
    while (past > least && at(placesMm, past - 1) > toMm) past--;
    const [first, last] = [
      Math.max(least, window.from - FELT_PLACES),
      Math.min(past - 1, window.to + FELT_PLACES),
    ];
    const alongMm = alongsOf(quick, placesMm, first, last);
    if (alongMm.length < 2) {
      const index = placesMm.findIndex((mm) => mm >= fromMm);
      offer((index < 0 ? placesMm.length : index) - 1, NOT_HELD);
      continue;
    }
    const hangsFree = [lane.hangsFree[0] && first === least, lane.hangsFree[1] && last === past - 1] as const;
    // Stretch 0 lies before the first place; what lies beyond the last places counts for the stretches beside them.
    const asked = [
      window.from === 0 ? 0 : Math.max(0, window.from - first + 1),
      window.to >= placesMm.length - 1 ? alongMm.length + 1 : window.to - first + 1,
    ] as const;
    const shares = quickShares(quick, { alongMm, hangsFree }, asked, settings);
    for (let i = 0; i < shares.length; i++) offer(first + i - 1, num(shares, i) * (1 + MISSED));
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

/** Where places lie along a lane, without those that stand in the one before. */
function alongsOf(
  { placeMm, alongMm }: QuickLane,
  placesMm: readonly number[],
  first: number,
  last: number,
): readonly number[] {
  const found: number[] = [];
  let step = 0;
  for (let i = first; i <= last; i++) {
    const mm = at(placesMm, i);
    step = stepFrom(placeMm, mm, step);
    found.push(readAt(placeMm, alongMm, mm, step));
  }
  return found;
}
