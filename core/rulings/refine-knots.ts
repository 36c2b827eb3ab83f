import { at } from "../foundation/index.ts";
import { creaseAngle } from "./crease-angle.ts";
import { type CornerSide, EDGE_NUMBERS, evaluateEdge } from "./evaluate-edge.ts";
import { CREASE_WEIGHT, SPACING_PULL } from "./grid-search.ts";
import type { EdgePair, Knot } from "./knots.ts";
import { type BendLimits, fanCost, type RulingEnds, rulingCost } from "./ruling-cost.ts";
import type { FanApex } from "./types.ts";

/** Places tried on each side of a knot, and how the step shrinks from round to round. */
const REACH = 4;
const SHRINK = 3;
/** Rounds without shrinking, while knots still run to the end of their reach. */
const MOST_EXTRA_ROUNDS = 6;
/** The last step, in progress: from here on Newton's method is faster. */
const LAST_STEP = 2e-6;

/**
 * Knots moved to where the whole cost is least, kept in order: a shortest path through a few places on either side of
 * each, again and again with smaller steps, from `step` (in progress) down.
 */
export function refineKnots(
  pair: EdgePair,
  knots: readonly Knot[],
  step: number,
  limits: BendLimits,
): readonly Knot[] {
  let [current, size, extra] = [knots, step, 0];
  while (size > LAST_STEP) {
    const { moved, atReach } = oneRound(pair, current, size, limits);
    current = moved;
    if (atReach && extra < MOST_EXTRA_ROUNDS) extra++;
    else size /= SHRINK;
  }
  return current;
}

/** A place that a knot may take. */
interface Choice {
  readonly firstMm: number;
  readonly secondMm: number;
  readonly offset: number;
  /** Cost by swept share before and after it, and of the crease on it. */
  readonly before: number;
  readonly after: number;
  readonly crease: number;
}

function oneRound(pair: EdgePair, knots: readonly Knot[], step: number, limits: BendLimits) {
  const choices = knots.map((_, index) => choicesOf(pair, knots, index, { step, limits }));
  const totals: number[][] = [at(choices, 0).map(({ crease }) => crease)];
  const origins: number[][] = [[]];
  for (let k = 1; k < knots.length; k++) {
    const { total, origin } = advance(
      pair,
      at(choices, k - 1),
      at(choices, k),
      at(totals, k - 1),
      at(knots, k - 1).fanAfter,
    );
    totals.push(total);
    origins.push(origin);
  }
  const last = at(totals, -1);
  let pick = last.indexOf(Math.min(...last));
  let atReach = false;
  const moved = [...knots];
  for (let k = knots.length - 1; k >= 0; k--) {
    const choice = at(at(choices, k), pick);
    if (Math.abs(choice.offset) === REACH) atReach = true;
    moved[k] = { ...at(knots, k), firstMm: choice.firstMm, secondMm: choice.secondMm };
    pick = at(origins, k)[pick] ?? 0;
  }
  return { moved, atReach };
}

function advance(
  pair: EdgePair,
  from: readonly Choice[],
  to: readonly Choice[],
  totals: readonly number[],
  fan: FanApex,
) {
  const total: number[] = [];
  const origin: number[] = [];
  for (const next of to) {
    let [best, bestFrom] = [Number.POSITIVE_INFINITY, 0];
    for (let k = 0; k < from.length; k++) {
      const here = at(from, k);
      const cost = (totals[k] ?? 0) + between(pair, here, next, fan);
      if (cost < best) [best, bestFrom] = [cost, k];
    }
    total.push(best + next.crease);
    origin.push(bestFrom);
  }
  return { total, origin };
}

/** Cost of the stretch between two knots by the trapezoidal rule; infinite where order is lost. */
function between(pair: EdgePair, from: Choice, to: Choice, fan: FanApex): number {
  const [da, db] = [to.firstMm - from.firstMm, to.secondMm - from.secondMm];
  if (da < 0 || db < 0) return Number.POSITIVE_INFINITY;
  if ((fan === "first" && da > 0) || (fan === "second" && db > 0)) return Number.POSITIVE_INFINITY;
  const [alpha, beta] = [da * pair.firstScale, db * pair.secondScale];
  const pull = alpha + beta > 0 ? (SPACING_PULL * (alpha - beta) * (alpha - beta)) / (2 * (alpha + beta)) : 0;
  return pull + (((da + db) / (2 * pair.sweptMm)) * (from.after + to.before)) / 2;
}

function choicesOf(
  pair: EdgePair,
  knots: readonly Knot[],
  index: number,
  { step, limits }: { readonly step: number; readonly limits: BendLimits },
): readonly Choice[] {
  const knot = at(knots, index);
  const fanBefore = index === 0 ? "none" : at(knots, index - 1).fanAfter;
  const isEnd = index === 0 || index === knots.length - 1;
  const reach = knot.hold === "fixed" ? 0 : REACH;
  const choices: Choice[] = [];
  for (let offset = -reach; offset <= reach; offset++) {
    const place = movedKnot(pair, knot, offset * step);
    if (place === undefined) continue;
    choices.push({ ...place, offset, ...costsOf(pair, knot, place, { fanBefore, isEnd, limits }) });
  }
  return choices;
}

/** A knot moved by a share of progress along the way that it is held; none beyond the edges' ends. */
export function movedKnot(pair: EdgePair, { hold, firstMm, secondMm }: Knot, offset: number) {
  const moved = {
    firstMm:
      hold === "free"
        ? firstMm + offset * pair.first.lengthMm
        : hold === "second"
          ? firstMm + 2 * offset * pair.first.lengthMm
          : firstMm,
    secondMm:
      hold === "free"
        ? secondMm - offset * pair.second.lengthMm
        : hold === "first"
          ? secondMm - 2 * offset * pair.second.lengthMm
          : secondMm,
  };
  const isInside = (mm: number, lengthMm: number) => mm >= 0 && mm <= lengthMm;
  return isInside(moved.firstMm, pair.first.lengthMm) && isInside(moved.secondMm, pair.second.lengthMm)
    ? moved
    : undefined;
}

function costsOf(
  pair: EdgePair,
  knot: Knot,
  place: { readonly firstMm: number; readonly secondMm: number },
  {
    fanBefore,
    isEnd,
    limits,
  }: { readonly fanBefore: FanApex; readonly isEnd: boolean; readonly limits: BendLimits },
) {
  const before = endsAt(pair, place, "before");
  const cost = (ends: RulingEnds, fan: FanApex) =>
    fan === "none" ? rulingCost(ends, limits) : fanCost(ends, fan, limits);
  const costBefore = cost(before, fanBefore);
  if (!knot.isApex) return { before: costBefore, after: costBefore, crease: 0 };
  const after = endsAt(pair, place, "after");
  const angle = isEnd
    ? 0
    : creaseAngle({ ends: before, fan: fanBefore }, { ends: after, fan: knot.fanAfter });
  return { before: costBefore, after: cost(after, knot.fanAfter), crease: CREASE_WEIGHT * angle * angle };
}

/** Both ends of a ruling evaluated on one side of it; at an end of an edge on the side that it has. */
export function endsAt(
  { first, second }: EdgePair,
  { firstMm, secondMm }: { readonly firstMm: number; readonly secondMm: number },
  side: CornerSide,
): RulingEnds {
  const numbers = new Float64Array(2 * EDGE_NUMBERS);
  const sideOf = (mm: number, lengthMm: number): CornerSide =>
    mm <= 0 ? "after" : mm >= lengthMm ? "before" : side;
  evaluateEdge(first, firstMm, sideOf(firstMm, first.lengthMm), numbers, 0);
  evaluateEdge(second, secondMm, sideOf(secondMm, second.lengthMm), numbers, EDGE_NUMBERS);
  return { first: numbers, firstOffset: 0, second: numbers, secondOffset: EDGE_NUMBERS };
}
