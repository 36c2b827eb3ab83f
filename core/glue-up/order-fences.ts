import { type FenceRoom, tightPlace } from "./fence-room.ts";
import type { GlueUnit } from "./glue-units.ts";

/** So many sets of fences are tried in every order; of more, always the one that leaves the most room comes next. */
const EVERY_ORDER = 6;
/** Less than this of a joint out of reach is none, mm. */
const SAME_MM = 1e-6;

type Rooms = ReadonlyMap<GlueUnit, FenceRoom>;

/**
 * Fences in the order in which each can still be reached with hand and brush when its turn comes, as far as there is one;
 * else with the least length of joint out of reach. As they are given where that is as good. `standing` is there already.
 */
export function orderFences(
  sets: readonly (readonly GlueUnit[])[],
  standing: readonly GlueUnit[],
  rooms: Rooms,
): readonly (readonly GlueUnit[])[] {
  return sets.length <= EVERY_ORDER ? bestOrder(sets, standing, rooms) : greedyOrder(sets, standing, rooms);
}

/** How much of a set's joints is out of reach when some fences stand, mm. */
const shutMm = (set: readonly GlueUnit[], standing: readonly GlueUnit[], rooms: Rooms): number =>
  set.reduce((sum, unit) => {
    const room = rooms.get(unit);
    return room ? sum + tightPlace(room, standing).lengthMm : sum;
  }, 0);

function bestOrder(
  sets: readonly (readonly GlueUnit[])[],
  standing: readonly GlueUnit[],
  rooms: Rooms,
): readonly (readonly GlueUnit[])[] {
  let best: { readonly order: readonly (readonly GlueUnit[])[]; readonly mm: number } | undefined;
  const go = (order: readonly (readonly GlueUnit[])[], left: typeof sets, mm: number): void => {
    if (best !== undefined && mm >= best.mm - SAME_MM) return;
    if (left.length === 0) best = { order, mm };
    const there = [...standing, ...order.flat()];
    for (const set of left)
      go(
        [...order, set],
        left.filter((other) => other !== set),
        mm + shutMm(set, there, rooms),
      );
  };
  go([], sets, 0);
  return best?.order ?? sets;
}

function greedyOrder(
  sets: readonly (readonly GlueUnit[])[],
  standing: readonly GlueUnit[],
  rooms: Rooms,
): readonly (readonly GlueUnit[])[] {
  const order: (readonly GlueUnit[])[] = [];
  let left = sets;
  while (left.length > 0) {
    const there = [...standing, ...order.flat()];
    const costs = left.map((set) => {
      const own = shutMm(set, there, rooms);
      const later = left.filter((other) => other !== set);
      return own + later.reduce((sum, other) => sum + shutMm(other, [...there, ...set], rooms), 0);
    });
    const next = left[costs.findIndex((mm) => mm <= Math.min(...costs) + SAME_MM)];
    if (next === undefined) return [...order, ...left];
    order.push(next);
    left = left.filter((set) => set !== next);
  }
  return order;
}
