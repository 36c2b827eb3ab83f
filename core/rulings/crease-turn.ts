import { crossSpace, dotSpace } from "../foundation/index.ts";
import { sweepAt } from "./sweep-at.ts";
import type { PairedEdges } from "./types.ts";

/**
 * The turn of the normal at a crease where an interval of the pairing begins, rad, right-handed about the ruling's
 * direction.
 */
export function creaseTurn(paired: PairedEdges, sMm: number, interval: number): number {
  const [before, after] = [sweepAt(paired, sMm, interval - 1), sweepAt(paired, sMm, interval)];
  const turn = dotSpace(crossSpace(before.normal, after.normal), before.direction);
  return Math.atan2(turn, dotSpace(before.normal, after.normal));
}
