import { weightN } from "../bending/index.ts";
import { formatNumber, type Problem } from "../foundation/index.ts";
import type { BendNeed } from "./bend-needs.ts";

const newtons = (forceN: number): string => `${formatNumber(Math.ceil(forceN), 0)} N`;

/** What a weight must have to press so, told in whole kilograms. */
const kilograms = (forceN: number): string => `${formatNumber(Math.ceil(forceN / weightN(1)), 0)} kg`;

/**
 * How a bent piece is held when it comes, in its step: what it pushes back with, what holds it, and until when: its joints
 * bear load after `loadHours`, absent where it has none.
 */
export function bendWords(need: BendNeed, loadHours: number | undefined): string {
  const { unit, momentNmm, by, forceN, ribId, holder, count } = need;
  const pushes = `${unit.id} pushes back with ${formatNumber(momentNmm / 1000, 1)} N m where it is bent`;
  const hours =
    loadHours === undefined ? "" : `for ${formatNumber(loadHours, 0)} h, until the joints bear load`;
  const until = `before any glue is spread, and leave that ${hours || "until the first skin has cured; where it stands in the way of cloth, put it back over peel ply, film and a board"}`;
  if (by === "joints") {
    const ends = `${newtons(forceN)} at each end of the bend`;
    return isHeld(need)
      ? `${pushes}: the pins of its joints take the ${ends}. Leave them in ${hours}.`
      : `${pushes}, and lies on too few ribs to be held by them. Clamp a batten over each end of the bend with ${newtons(forceN)}, or lay ${kilograms(forceN)} on it, ${until}.`;
  }
  if (by === "weights")
    return isHeld(need)
      ? `${pushes}, and on two ribs foam stays straight: bring it to its line with ${newtons(forceN)} at each end of the bend (${counted(count, holder)}) ${until}.`
      : `${pushes}, and on two ribs foam stays straight: clamp battens over both ends of the bend with ${newtons(forceN)} each ${until}.`;
  const where = ribId ? ` at rib ${ribId}` : " past the bend";
  if (isHeld(need) && count !== null)
    return count === 0
      ? `${pushes}: its own pins hold it${where}.`
      : `${pushes}: hold it down${where} with ${newtons(forceN)} (${counted(count, holder)}) ${until}.`;
  return `${pushes}: it wants ${newtons(forceN)}${where}, more than the ${holder} that find room there give. Lay a stiff batten across and clamp that down with ${newtons(forceN)} ${until}.`;
}

/** `1 sandbag`, `3 straps`. */
const counted = (count: number | null, holder: BendNeed["holder"]): string =>
  count === 1 ? `1 ${holder.replace(/s$/, "")}` : `${count ?? 0} ${holder}`;

/** Whether what holds it gives what it needs. */
export const isHeld = ({ forceN, heldN }: BendNeed): boolean => heldN >= forceN - 1e-9;

/** A bent piece that is not held enough when it comes. */
export function bendProblem(need: BendNeed): readonly Problem[] {
  if (isHeld(need)) return [];
  const { unit, momentNmm, by, forceN, heldN } = need;
  const { part } = unit;
  const place = { itemId: part.itemId, partId: part.id };
  return [{ kind: "bend-not-held", place, name: part.name, stripId: unit.id, momentNmm, by, forceN, heldN }];
}
