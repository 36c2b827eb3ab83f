import { at } from "../foundation/index.ts";
import type { Next } from "./order-state.ts";

/** Which of two comes first. */
export type Rank = (a: Next, b: Next) => number;

/** Neighbours of what stands, outward from the centre line; then foremost, right before left, by id. */
export const byReach: Rank = (a, b) => a.rank - b.rank || byPlace(a, b);

/** What can begin soonest, closers last. */
export const byStart: Rank = (a, b) => hardness(a) - hardness(b) || a.start - b.start || byPlace(a, b);

/** From the front rearward, so that a wide tray closes no gap between its rows. */
export const byFront: Rank = (a, b) =>
  hardness(a) - hardness(b) ||
  Math.round(at(a.units, 0).middle.x) - Math.round(at(b.units, 0).middle.x) ||
  byPlace(a, b);

/** What lies by itself is as good as what touches others. */
export const hardness = ({ rank }: Next): number => Math.max(1, rank);

function byPlace(a: Next, b: Next): number {
  const [one, other] = [at(a.units, 0), at(b.units, 0)];
  return (
    Math.round(Math.abs(one.middle.y)) - Math.round(Math.abs(other.middle.y)) ||
    other.ribIds.length - one.ribIds.length ||
    Math.round(one.middle.x) - Math.round(other.middle.x) ||
    other.middle.y - one.middle.y ||
    (one.id < other.id ? -1 : 1)
  );
}
