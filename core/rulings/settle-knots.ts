import { at } from "../foundation/index.ts";
import { type EdgePair, type Knot, progressOf } from "./knots.ts";
import { evaluateEnds, movedKnot, openEnds } from "./refine-knots.ts";
import { type BendLimits, bendOf, type RulingEnds, twistOf } from "./ruling-cost.ts";
import { CREASE_WEIGHT, SPACING_PULL } from "./search-charges.ts";

/** Newton's steps; each doubles the digits. */
const ROUNDS = 4;
/** Step of the difference quotient, in progress. */
const DIFFERENCE = 1e-6;
/** No step goes further than this, in progress: the search has come nearer already. */
const LONGEST_STEP = 1e-4;
/** Twist squared may rise by this, rad², where the pull evens out rulings of a flat stretch. */
const ALLOWED_RISE = 1e-12;
/** Twist by progress, rad, from which on the pull fades: a root is isolated there. */
const ISOLATED = 1e-2;

/**
 * Knots brought to the least of the same cost by Gauss-Newton: twists of all knots linear in their moves, and the pull
 * toward even spacing between neighbours. Where the twist changes along the move (its root is isolated) that sets it to
 * the root; where it does not, the sheet is flat and the pull spreads the rulings. A knot whose move would break the
 * order, or raise its twist, keeps its place.
 */
export function settleKnots(pair: EdgePair, knots: readonly Knot[], limits: BendLimits): readonly Knot[] {
  const room = { pair, ends: openEnds() };
  let current = knots;
  const frozen = knots.map((knot, index) => !mayMove(pair, knots, index, knot) || isBent(room, knot, limits));
  for (let round = 0; round < ROUNDS; round++) {
    const moves = solve(room, current, frozen);
    current = moved(room, current, moves, frozen);
  }
  return current;
}

/** Knots that stand against a neighbour already, and corners passed by one ruling, stay where the search put them. */
function mayMove(pair: EdgePair, knots: readonly Knot[], index: number, knot: Knot): boolean {
  const [before, after] = [knots[index - 1], knots[index + 1]];
  if (knot.hold === "fixed" || before === undefined || after === undefined) return false;
  const fans = (before.fanAfter === "none" ? 0 : 1) + (knot.fanAfter === "none" ? 0 : 1);
  if (knot.isApex && fans !== 1) return false;
  const touches = (a: Knot, b: Knot) =>
    a.fanAfter === "none" &&
    ((b.firstMm - a.firstMm) * pair.firstScale < 1e-9 || (b.secondMm - a.secondMm) * pair.secondScale < 1e-9);
  return !touches(before, knot) && !touches(knot, after);
}

/** Whether a ruling bends more than the foam takes: there the search has traded bend against twist. */
function isBent({ pair, ends }: Room, knot: Knot, limits: BendLimits): boolean {
  evaluateEnds(pair, knot, "before", ends);
  const twist = twistOf(ends.first, ends.firstOffset, ends.second, ends.secondOffset);
  return !knot.isApex && bendOf(ends, twist, "none", limits) > 0;
}

/** The edges, and room for the ends of a ruling. */
interface Room {
  readonly pair: EdgePair;
  readonly ends: RulingEnds;
}

/** Twist at a knot on the side where it is no fan. */
function twistAt({ pair, ends }: Room, knots: readonly Knot[], index: number, offset: number): number {
  const knot = at(knots, index);
  const place = movedKnot(pair, knot, offset) ?? knot;
  const side = (knots[index - 1]?.fanAfter ?? "none") === "none" ? "before" : "after";
  evaluateEnds(pair, place, side, ends);
  return twistOf(ends.first, ends.firstOffset, ends.second, ends.secondOffset);
}

function solve(room: Room, knots: readonly Knot[], frozen: readonly boolean[]): readonly number[] {
  const count = knots.length;
  const diagonal = new Array<number>(count).fill(0);
  const upper = new Array<number>(count).fill(0);
  const right = new Array<number>(count).fill(0);
  const slopes = knots.map((_, index) =>
    at(frozen, index)
      ? 0
      : (twistAt(room, knots, index, DIFFERENCE) - twistAt(room, knots, index, -DIFFERENCE)) /
        (2 * DIFFERENCE),
  );
  const progress = knots.map(({ firstMm, secondMm }) => progressOf(room.pair, firstMm, secondMm));
  const { pair } = room;
  const lead = knots.map(
    ({ firstMm, secondMm }) => (firstMm * pair.firstScale - secondMm * pair.secondScale) / 2,
  );
  for (let k = 0; k < count; k++) {
    const weight = weightOf(knots, progress, k);
    const slope = at(slopes, k);
    diagonal[k] = (diagonal[k] ?? 0) + weight * slope * slope;
    right[k] = (right[k] ?? 0) - weight * slope * twistAt(room, knots, k, 0);
    if (k + 1 === count || at(knots, k).fanAfter !== "none") continue;
    const span = at(progress, k + 1) - at(progress, k);
    if (span <= 0) continue;
    const stiff = pullBetween(at(slopes, k), at(slopes, k + 1)) / span;
    const tension = stiff * (at(lead, k + 1) - at(lead, k));
    // Held knots move progress as well as lead; their pull is too small to matter there.
    diagonal[k] = (diagonal[k] ?? 0) + stiff;
    diagonal[k + 1] = (diagonal[k + 1] ?? 0) + stiff;
    upper[k] = -stiff;
    right[k] = (right[k] ?? 0) + tension;
    right[k + 1] = (right[k + 1] ?? 0) - tension;
  }
  return tridiagonal(diagonal, upper, right, frozen);
}

/** The pull fades where roots are isolated, so that it does not draw rulings off them. */
function pullBetween(slopeA: number, slopeB: number): number {
  const square = (slopeA * slopeA + slopeB * slopeB) / (2 * ISOLATED * ISOLATED);
  return SPACING_PULL / (1 + square * square);
}

/** The swept share that a knot stands for; at the border of a fan the charge for a crease. */
function weightOf(knots: readonly Knot[], progress: readonly number[], k: number): number {
  if (at(knots, k).isApex) return CREASE_WEIGHT;
  return ((progress[k + 1] ?? at(progress, k)) - (progress[k - 1] ?? at(progress, k))) / 2;
}

/** Moves of a symmetric tridiagonal system; frozen rows do not move (Thomas' algorithm). */
function tridiagonal(
  diagonal: readonly number[],
  upper: readonly number[],
  right: readonly number[],
  frozen: readonly boolean[],
): readonly number[] {
  const count = diagonal.length;
  const d = diagonal.map((value, k) => (at(frozen, k) || value === 0 ? 1 : value));
  const u = upper.map((value, k) => (at(frozen, k) || frozen[k + 1] === true ? 0 : value));
  const r = right.map((value, k) => (at(frozen, k) ? 0 : value));
  for (let k = 1; k < count; k++) {
    const factor = at(u, k - 1) / at(d, k - 1);
    d[k] = at(d, k) - factor * at(u, k - 1);
    r[k] = at(r, k) - factor * at(r, k - 1);
  }
  const out = new Array<number>(count).fill(0);
  for (let k = count - 1; k >= 0; k--) out[k] = (at(r, k) - at(u, k) * (out[k + 1] ?? 0)) / at(d, k);
  return out;
}

function moved(
  room: Room,
  knots: readonly Knot[],
  moves: readonly number[],
  frozen: boolean[],
): readonly Knot[] {
  const next = knots.map((knot, k): Knot => {
    const offset = Math.max(-LONGEST_STEP, Math.min(LONGEST_STEP, at(moves, k)));
    const place = at(frozen, k) ? undefined : movedKnot(room.pair, knot, offset);
    if (place === undefined) return knot;
    const [was, is] = [twistAt(room, knots, k, 0), twistAt(room, knots, k, offset)];
    return is * is > was * was + ALLOWED_RISE ? knot : { ...knot, ...place };
  });
  // Where order was lost both knots go back and stay; going back may press on the next pair.
  for (let changed = true; changed; ) {
    changed = false;
    for (let k = 1; k < next.length; k++) {
      const [a, b] = [at(next, k - 1), at(next, k)];
      if (b.firstMm >= a.firstMm && b.secondMm >= a.secondMm) continue;
      for (const index of [k - 1, k]) {
        if (next[index] === knots[index]) continue;
        next[index] = at(knots, index);
        frozen[index] = true;
        changed = true;
      }
    }
  }
  return next;
}
