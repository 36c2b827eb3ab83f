import { at } from "../foundation/index.ts";
import { type Stretch, sharedMm } from "./crossing-rib.ts";

/** A place for a splice is looked for this often, mm. */
const STEP_MM = 5;
/** A rib is divided into no more pieces than its length asks for and this many more. */
const MORE_PIECES = 4;

export interface SpliceRoom {
  /** The longest piece that the board gives. */
  readonly longestMm: number;
  /** What the splice needs on both sides of its line. */
  readonly reachMm: number;
  /** By how much a piece is longer than from splice to splice: its tail. */
  readonly tailMm: number;
  /** Notches, slots and reliefs, which no splice comes near. */
  readonly busy: readonly Stretch[];
}

/**
 * Where a rib that is longer than its board is spliced: in as few pieces as the board allows, of even length as nearly
 * as notches and slots let it. Empty where it fits in one piece; undefined where no such places are.
 */
export function splicePlaces([firstMm, lastMm]: Stretch, room: SpliceRoom): readonly number[] | undefined {
  const { longestMm, tailMm } = room;
  const lengthMm = lastMm - firstMm;
  if (lengthMm <= longestMm) return [];
  if (longestMm - tailMm < 2 * room.reachMm) return undefined;
  const least = Math.ceil(lengthMm / (longestMm - tailMm) - 1e-9);
  for (let pieces = Math.max(2, least); pieces <= least + MORE_PIECES; pieces++) {
    const places = placesFor([firstMm, lastMm], pieces, room);
    if (places !== undefined) return places;
  }
  return undefined;
}

function placesFor(
  [firstMm, lastMm]: Stretch,
  pieces: number,
  { longestMm, reachMm, tailMm, busy }: SpliceRoom,
): readonly number[] | undefined {
  const isFree = (mm: number) => busy.every((one) => sharedMm(one, [mm - reachMm, mm + reachMm]) === 0);
  const places: number[] = [];
  for (let i = 1; i < pieces; i++) {
    const wishMm = firstMm + ((lastMm - firstMm) * i) / pieces;
    const beforeMm = places.length === 0 ? firstMm : at(places, -1);
    const leftMm = Math.max(beforeMm + reachMm, lastMm - (pieces - i) * (longestMm - tailMm));
    const rightMm = Math.min(beforeMm + longestMm - tailMm, lastMm - reachMm);
    const found = nearest(wishMm, [leftMm, rightMm], isFree);
    if (found === undefined) return undefined;
    places.push(found);
  }
  return places;
}

function nearest(
  wishMm: number,
  [leftMm, rightMm]: Stretch,
  isFree: (mm: number) => boolean,
): number | undefined {
  if (rightMm < leftMm) return undefined;
  const startMm = Math.min(Math.max(wishMm, leftMm), rightMm);
  for (let asideMm = 0; asideMm <= rightMm - leftMm; asideMm += STEP_MM) {
    const found = [startMm + asideMm, startMm - asideMm].find(
      (mm) => mm >= leftMm && mm <= rightMm && isFree(mm),
    );
    if (found !== undefined) return found;
  }
  return undefined;
}
