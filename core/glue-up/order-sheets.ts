import { improveOrder } from "./improve-order.ts";
import { isCloser } from "./neighbours.ts";
import { type Ground, isCheaper, type OrderGround, prepared, type SheetOrder } from "./order-ground.ts";
import { byFront, byReach, byStart, hardness, type Rank } from "./order-ranks.ts";
import { boundOf, candidates, type State, startOf } from "./order-state.ts";

/** So many pieces are weighed against each other at most: on a tray of seven parts enough for every order. */
const MOST_WEIGHED = 14_000;
/** With more bundles than these not all orders can be seen, and so many are weighed, in a moment. */
const ALL_ORDERS = 8;
const MOST_OF_MANY = 2_000;
/** The simple orders of many are made cheaper by moving pieces, as long as no more than so many are laid for that. */
const MOST_MOVED = 6_000;

/**
 * The cheapest order found by branch and bound: first the one that leaves the fewest gaps and goes outward from the centre line,
 * always to a neighbour of what stands (of several the one nearest the centre line, then the one on most ribs); then
 * with whatever can begin soonest, and from the front rearward; then all others as long as one can still be cheaper; of many pieces not all orders are seen, and the best is made cheaper by
 * moving one at a time. A right and a left image that do not touch come together.
 */
export function orderSheets(asked: OrderGround): SheetOrder {
  const ground = prepared(asked);
  const isMany = ground.bundles.length > ALL_ORDERS;
  const most = isMany ? MOST_OF_MANY : MOST_WEIGHED;
  let weighed = 0;
  let best: SheetOrder = isMany ? quickOrder(ground, MOST_MOVED) : cheapest(firstOrders(ground));
  const goOn = (state: State): void => {
    if (state.waiting.length === 0) {
      if (isCheaper(state.cost, best.cost)) best = state;
      return;
    }
    const nexts = candidates(state, ground).toSorted(byReach);
    weighed += nexts.length;
    for (const { after } of nexts) {
      if (weighed > most) return;
      if (isCheaper(boundOf(after), best.cost)) goOn(after);
    }
  };
  goOn(startOf(ground));
  return isMany ? improveOrder(best, ground, MOST_MOVED) : best;
}

/** A cheap order of many pieces: the simple ones, each made cheaper by moving pieces, and of these the cheapest. */
export function quickOrder(ground: Ground, mostLaid: number): SheetOrder {
  const firsts = firstOrders(ground);
  return cheapest(firsts.map((first) => improveOrder(first, ground, mostLaid / firsts.length)));
}

const firstOrders = (ground: Ground): readonly SheetOrder[] =>
  [byReach, byStart, byFront].map((rank) => greedy(startOf(ground), rank, ground));

const cheapest = (orders: readonly SheetOrder[]): SheetOrder =>
  orders.reduce((best, order) => (isCheaper(order.cost, best.cost) ? order : best));

/** Always what leaves the fewest gaps to be closed later, and of those the first by rank. */
function greedy(start: State, rank: Rank, ground: Ground): State {
  let state = start;
  while (state.waiting.length > 0) {
    const nexts = candidates(state, ground).map((next) => ({ next, gaps: gapsLeft(next.after, ground) }));
    const [chosen] = nexts.toSorted(
      (a, b) => hardness(a.next) - hardness(b.next) || a.gaps - b.gaps || rank(a.next, b.next),
    );
    if (chosen === undefined) return state;
    state = chosen.next.after;
  }
  return state;
}

/** How many of those that wait would have to be let in between others now, or have a joint that is closed off. */
const gapsLeft = ({ waiting, standing }: State, { bondsOf }: Ground): number =>
  waiting
    .flatMap(({ units }) => units)
    .filter((unit) => {
      const own = bondsOf.get(unit) ?? [];
      return (
        own.some(({ closedBy }) => closedBy?.some((other) => standing.includes(other))) ||
        (unit.part.kind !== "transition" && isCloser(unit, standing, own))
      );
    }).length;
