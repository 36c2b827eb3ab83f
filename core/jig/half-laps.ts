import type { FlatPoint } from "../foundation/index.ts";
import type { RibCut } from "./rib-outline.ts";
import { heightOnTop } from "./simplify-top.ts";

/** A slot is wider than the board by this, mm. */
const SLOT_EASE_MM = 0.2;

/** A rib as far as crossing others is concerned: its body in plan and its top. */
export interface CrossingRib {
  readonly id: string;
  readonly runs: "across" | "along";
  /** Its body: least and greatest x (across) or y (along). */
  readonly body: readonly [number, number];
  readonly top: readonly FlatPoint[];
}

/**
 * The slots that a rib needs where ribs of the other direction cross it: half of the lower height each, ribs
 * across slotted from below and ribs along from above.
 */
export function halfLaps(rib: CrossingRib, others: readonly CrossingRib[]): RibCut[] {
  return others.flatMap((other): RibCut[] => {
    if (other.runs === rib.runs) return [];
    const here = middle(other.body);
    const there = middle(rib.body);
    if (!isWithin(here, rib.top) || !isWithin(there, other.top)) return [];
    const levelMm = Math.min(heightOnTop(rib.top, here), heightOnTop(other.top, there)) / 2;
    const from = rib.runs === "across" ? "below" : "top";
    const fromMm = other.body[0] - SLOT_EASE_MM / 2;
    const toMm = other.body[1] + SLOT_EASE_MM / 2;
    return [{ from, fromMm, toMm, levelMm }];
  });
}

const middle = ([from, to]: readonly [number, number]): number => (from + to) / 2;

function isWithin(uMm: number, top: readonly FlatPoint[]): boolean {
  const first = top[0];
  const last = top[top.length - 1];
  return first !== undefined && last !== undefined && uMm > first.u && uMm < last.u;
}
