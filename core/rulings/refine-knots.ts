import { at } from "../foundation/index.ts";
import { creaseAngle } from "./crease-angle.ts";
import { type CornerSide, EDGE_NUMBERS, evaluateEdge } from "./evaluate-edge.ts";
import type { EdgePair, Knot } from "./knots.ts";
import { type BendLimits, fanCost, type RulingEnds, rulingCost } from "./ruling-cost.ts";
import { creaseCharge, LEAST_CREASE_RAD, SPACING_PULL } from "./search-charges.ts";
import type { FanApex } from "./types.ts";

/** Places tried on each side of a knot, all of them, and how the step shrinks from round to round. */
const REACH = 3;
const CHOICES = 2 * REACH + 1;
const SHRINK = 4;
/** Rounds without shrinking, while knots still run to the end of their reach. */
const MOST_EXTRA_ROUNDS = 6;
/** The last step, in progress: from here on Newton's method is faster. */
const LAST_STEP = 8e-6;

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
  const trial = openTrial(knots.length);
  let current = knots;
  let extra = 0;
  for (let size = step; size > LAST_STEP; ) {
    const { moved, atReach } = oneRound(trial, pair, current, { step: size, limits });
    current = moved;
    if (atReach && extra < MOST_EXTRA_ROUNDS) extra++;
    else size /= SHRINK;
  }
  return current;
}

/** The places that knots may take in a round, CHOICES a knot, and what they cost. */
interface Trial {
  readonly firstMm: Float64Array;
  readonly secondMm: Float64Array;
  /** Cost by swept share before and after the ruling, and of the crease on it; infinite where there is no such place. */
  readonly before: Float64Array;
  readonly after: Float64Array;
  readonly crease: Float64Array;
  readonly total: Float64Array;
  readonly origin: Int8Array;
  readonly ends: { readonly before: RulingEnds; readonly after: RulingEnds };
}

interface Round {
  readonly step: number;
  readonly limits: BendLimits;
}

function openTrial(count: number): Trial {
  const list = () => new Float64Array(count * CHOICES);
  return {
    firstMm: list(),
    secondMm: list(),
    before: list(),
    after: list(),
    crease: list(),
    total: list(),
    origin: new Int8Array(count * CHOICES),
    ends: { before: openEnds(), after: openEnds() },
  };
}

function oneRound(trial: Trial, pair: EdgePair, knots: readonly Knot[], round: Round) {
  for (let k = 0; k < knots.length; k++) {
    placeChoices(trial, pair, knots, k, round);
    if (k === 0) trial.total.set(trial.crease.subarray(0, CHOICES));
    else advance(trial, pair, k, at(knots, k - 1).fanAfter);
  }
  let pick = leastOf(trial.total, (knots.length - 1) * CHOICES);
  let atReach = false;
  const moved = [...knots];
  for (let k = knots.length - 1; k >= 0; k--) {
    const place = k * CHOICES + pick;
    if (pick === 0 || pick === CHOICES - 1) atReach = true;
    moved[k] = { ...at(knots, k), firstMm: f64(trial.firstMm, place), secondMm: f64(trial.secondMm, place) };
    pick = trial.origin[place] ?? 0;
  }
  return { moved, atReach };
}

function leastOf(list: Float64Array, start: number): number {
  let best = REACH;
  for (let k = 0; k < CHOICES; k++) if (f64(list, start + k) < f64(list, start + best)) best = k;
  return best;
}

/** Least costs of knot k's choices from those of the knot before. */
function advance(
  { firstMm, secondMm, before, after, crease, total, origin }: Trial,
  pair: EdgePair,
  k: number,
  fan: FanApex,
): void {
  const { firstScale, secondScale } = pair;
  const share = 1 / (4 * pair.sweptMm);
  for (let to = k * CHOICES; to < (k + 1) * CHOICES; to++) {
    let best = Number.POSITIVE_INFINITY;
    let bestFrom = REACH;
    const bound = f64(crease, to) < Number.POSITIVE_INFINITY ? CHOICES : 0;
    for (let j = 0; j < bound; j++) {
      const from = (k - 1) * CHOICES + j;
      const start = f64(total, from);
      if (start >= best) continue;
      const da = f64(firstMm, to) - f64(firstMm, from);
      const db = f64(secondMm, to) - f64(secondMm, from);
      if (da < 0 || db < 0 || (fan === "first" && da > 0) || (fan === "second" && db > 0)) continue;
      const alpha = da * firstScale;
      const beta = db * secondScale;
      const sum = alpha + beta;
      const pull = sum > 0 ? (SPACING_PULL * (alpha - beta) * (alpha - beta)) / (2 * sum) : 0;
      const cost = start + pull + (da + db) * share * (f64(after, from) + f64(before, to));
      if (cost < best) {
        best = cost;
        bestFrom = j;
      }
    }
    total[to] = best + f64(crease, to);
    origin[to] = bestFrom;
  }
}

/** The choices of one knot and their costs. */
function placeChoices(
  trial: Trial,
  pair: EdgePair,
  knots: readonly Knot[],
  k: number,
  { step, limits }: Round,
): void {
  const knot = at(knots, k);
  const fanBefore = k === 0 ? "none" : at(knots, k - 1).fanAfter;
  const isEnd = k === 0 || k === knots.length - 1;
  const reach = knot.hold === "fixed" ? 0 : REACH;
  for (let choice = 0; choice < CHOICES; choice++) {
    const offset = choice - REACH;
    const place = k * CHOICES + choice;
    const moved = Math.abs(offset) > reach ? undefined : movedKnot(pair, knot, offset * step);
    trial.crease[place] = moved === undefined ? Number.POSITIVE_INFINITY : 0;
    if (moved === undefined) continue;
    trial.firstMm[place] = moved.firstMm;
    trial.secondMm[place] = moved.secondMm;
    const { before, after } = trial.ends;
    evaluateEnds(pair, moved, "before", before);
    const cost = costOf(before, fanBefore, limits);
    trial.before[place] = cost;
    trial.after[place] = cost;
    if (!knot.isApex) continue;
    evaluateEnds(pair, moved, "after", after);
    trial.after[place] = costOf(after, knot.fanAfter, limits);
    if (isEnd) continue;
    const angle = creaseAngle({ ends: before, fan: fanBefore }, { ends: after, fan: knot.fanAfter });
    trial.crease[place] = creaseCharge(angle, LEAST_CREASE_RAD);
  }
}

const costOf = (ends: RulingEnds, fan: FanApex, limits: BendLimits): number =>
  fan === "none" ? rulingCost(ends, limits) : fanCost(ends, fan, limits);

/** A knot moved by a share of progress along the way that it is held; none beyond the edges' ends. */
export function movedKnot({ first, second }: EdgePair, { hold, firstMm, secondMm }: Knot, offset: number) {
  const firstShare = hold === "free" ? 1 : hold === "second" ? 2 : 0;
  const secondShare = hold === "free" ? 1 : hold === "first" ? 2 : 0;
  const [a, b] = [
    firstMm + offset * firstShare * first.lengthMm,
    secondMm - offset * secondShare * second.lengthMm,
  ];
  return a >= 0 && a <= first.lengthMm && b >= 0 && b <= second.lengthMm
    ? { firstMm: a, secondMm: b }
    : undefined;
}

/** Room for both ends of a ruling. */
export function openEnds(): RulingEnds {
  const numbers = new Float64Array(2 * EDGE_NUMBERS);
  return { first: numbers, firstOffset: 0, second: numbers, secondOffset: EDGE_NUMBERS };
}

/** Writes both ends of a ruling as they are on one side of it; at an end of an edge on the side that it has. */
export function evaluateEnds(
  { first, second }: EdgePair,
  { firstMm, secondMm }: { readonly firstMm: number; readonly secondMm: number },
  side: CornerSide,
  ends: RulingEnds,
): void {
  evaluateEdge(first, firstMm, sideOf(firstMm, first.lengthMm, side), ends.first, ends.firstOffset);
  evaluateEdge(second, secondMm, sideOf(secondMm, second.lengthMm, side), ends.second, ends.secondOffset);
}

const sideOf = (mm: number, lengthMm: number, side: CornerSide): CornerSide =>
  mm <= 0 ? "after" : mm >= lengthMm ? "before" : side;

const f64 = (list: Float64Array, index: number): number => list[index] ?? 0;
