import { type CrossingRib, endsOf, sharedMm } from "./crossing-rib.ts";
import type { RibCut } from "./rib-outline.ts";
import { heightOnTop } from "./simplify-top.ts";

/** A slot is wider than the board by this, mm. */
const SLOT_EASE_MM = 0.2;

/**
 * The slots that a rib needs where ribs of the other direction cross it, or end in it: half of the lower height
 * each, ribs across slotted from below and ribs along from above.
 */
export function halfLaps(rib: CrossingRib, others: readonly CrossingRib[]): RibCut[] {
  return others.flatMap((other): RibCut[] => {
    if (other.runs === rib.runs) return [];
    if (sharedMm(other.body, endsOf(rib)) === 0 || sharedMm(rib.body, endsOf(other)) === 0) return [];
    const [here, there] = [middle(other.body), middle(rib.body)];
    const levelMm = Math.min(heightOnTop(rib.top, here), heightOnTop(other.top, there)) / 2;
    const from = rib.runs === "across" ? "below" : "top";
    const fromMm = other.body[0] - SLOT_EASE_MM / 2;
    const toMm = other.body[1] + SLOT_EASE_MM / 2;
    return [{ from, fromMm, toMm, levelMm }];
  });
}

const middle = ([from, to]: readonly [number, number]): number => (from + to) / 2;
