import type { Bundle } from "./bundles.ts";
import type { GlueUnit } from "./glue-units.ts";
import { type Ground, isCheaper, type SheetOrder } from "./order-ground.ts";
import { laid, type State, startOf } from "./order-state.ts";

/**
 * An order made cheaper step by step: what comes together is moved to another place, or changes places with something else, as long as that is cheaper and the builder's wishes let it come there. `mostLaid` limits how often a piece is
 * laid for that. Never dearer than the order given.
 */
export function improveOrder(given: SheetOrder, ground: Ground, mostLaid: number): SheetOrder {
  let sets = setsOf(given, ground);
  let best: { readonly order: SheetOrder; readonly on: readonly State[] } = {
    order: given,
    on: replay(sets, [startOf(ground)], ground) ?? [],
  };
  let left = mostLaid;
  for (let isBetter = best.on.length > 0; isBetter; ) {
    isBetter = false;
    for (const move of movesOf(sets.length)) {
      const kept = Math.min(move.from, move.to);
      if (left < sets.length - kept) return best.order;
      const tried = moved(sets, move);
      left -= sets.length - kept;
      const on = replay(tried, best.on.slice(0, kept + 1), ground);
      const end = on?.at(-1);
      if (on === undefined || end === undefined || !isCheaper(end.cost, best.order.cost)) continue;
      sets = tried;
      best = { order: end, on };
      isBetter = true;
    }
  }
  return best.order;
}

type Sets = readonly (readonly Bundle[])[];

/** What comes together in each placement, as bundles. */
function setsOf({ placements }: SheetOrder, { bundles }: Ground): Sets {
  const own = new Map<GlueUnit, Bundle>(
    bundles.flatMap((one) => one.units.map((unit) => [unit, one] as const)),
  );
  return placements.map(({ units }) => [...new Set(units.flatMap((unit) => own.get(unit) ?? []))]);
}

interface Move {
  readonly way: "to" | "swap";
  readonly from: number;
  readonly to: number;
}

/** Every move of one set to another place, and every change of two, the near ones first: they lay the least anew. */
const movesOf = (count: number): readonly Move[] =>
  Array.from({ length: count }, (_, i) => i)
    .flatMap((from) =>
      Array.from({ length: count }, (_, to) => to).flatMap((to): readonly Move[] => [
        ...(to !== from && to + 1 !== from ? [{ way: "to" as const, from, to }] : []),
        ...(to > from + 1 ? [{ way: "swap" as const, from, to }] : []),
      ]),
    )
    .toSorted((a, b) => Math.abs(a.from - a.to) - Math.abs(b.from - b.to));

function moved(sets: Sets, { way, from, to }: Move): Sets {
  const [set, other] = [sets[from], sets[to]];
  if (set === undefined || other === undefined) return sets;
  return way === "swap"
    ? sets.with(from, other).with(to, set)
    : sets.toSpliced(from, 1).toSpliced(to, 0, set);
}

/** The states that an order passes, the first ones given; undefined where something may not come in its place. */
function replay(sets: Sets, given: readonly State[], ground: Ground): readonly State[] | undefined {
  const on = [...given];
  for (const set of sets.slice(given.length - 1)) {
    const state = on.at(-1);
    if (state === undefined || !set.every((bundle) => ground.mayCome(bundle, state.standing)))
      return undefined;
    on.push(laid(set, state, ground).after);
  }
  return on;
}
