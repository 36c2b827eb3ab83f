import { type CrossingRib, endsOf, sharedMm } from "./crossing-rib.ts";
import { heightOnTop } from "./simplify-top.ts";
import type { RibLap } from "./types.ts";

/**
 * The slots that a rib needs where ribs of the other direction cross it, or end in it: half of the lower height
 * each, ribs across slotted from below and ribs along from above, so that ribs across come down over those along.
 */
export function halfLaps(
  rib: CrossingRib,
  others: readonly CrossingRib[],
  clearanceMm: number,
): readonly RibLap[] {
  return others.flatMap((other): RibLap[] => {
    if (other.runs === rib.runs) return [];
    if (sharedMm(other.body, endsOf(rib)) === 0 || sharedMm(rib.body, endsOf(other)) === 0) return [];
    const [here, there] = [middle(other.body), middle(rib.body)];
    const levelMm = Math.min(heightOnTop(rib.top, here), heightOnTop(other.top, there)) / 2;
    const from = rib.runs === "across" ? "below" : "top";
    const fromMm = other.body[0] - clearanceMm / 2;
    const toMm = other.body[1] + clearanceMm / 2;
    return [{ otherId: other.id, from, fromMm, toMm, levelMm }];
  });
}

const middle = ([from, to]: readonly [number, number]): number => (from + to) / 2;
