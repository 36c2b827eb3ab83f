import type { FlatPoint } from "../../../core/foundation/index.ts";

/** A piece of cloth by its lines. */
export interface Cloth {
  readonly outlineMm: readonly FlatPoint[];
  readonly holesMm: readonly (readonly FlatPoint[])[];
}

/** Whether cloth lies over a place: inside its outline and outside its holes, by the winding of each loop. */
export const isCovered = (place: FlatPoint, { outlineMm, holesMm }: Cloth): boolean =>
  windings(place, outlineMm) !== 0 && holesMm.every((hole) => windings(place, hole) === 0);

function windings({ u, v }: FlatPoint, loop: readonly FlatPoint[]): number {
  let turns = 0;
  for (const [i, b] of loop.entries()) {
    const a = loop[(i + loop.length - 1) % loop.length];
    if (!a || a.v > v === b.v > v) continue;
    const crosses = a.u + ((v - a.v) * (b.u - a.u)) / (b.v - a.v);
    if (crosses > u) turns += b.v > a.v ? 1 : -1;
  }
  return turns;
}
