import { disrupted } from "./disrupt.ts";
import { copyLie } from "./field.ts";
import { firstSearch } from "./first-lie.ts";
import type { Prepared } from "./prepare.ts";
import { fieldOf, isRoll, type Search, tightened } from "./search-state.ts";
import { type Patience, sweep } from "./separate.ts";
import { shortened, widened } from "./shorten.ts";

/** How far a step goes, and how much of the whole budget is spent by then, from 0 to 1. */
export interface StepBudget {
  readonly sweeps: number;
  readonly progress: number;
}

/** Beyond this share of the budget the best layout is only pressed together. */
const EXPLORING_ENDS = 0.75;
/** The share that is taken off next: first, and at least. Of a roll its length, of a sheet its whole length. */
const [ROLL_SHRINK, LEAST_ROLL_SHRINK] = [0.02, 0.001];
const [SHEET_SHRINK, LEAST_SHEET_SHRINK] = [0.3, 0.005];
const [SHRINK_GROWS, SHRINK_FALLS] = [1.5, 0.5];
/** What pressing takes off at its beginning and at its end. */
const [FIRST_PRESS, LAST_PRESS] = [0.0015, 0.00003];
/** Sweeps without gain before a strike, by the number of pieces: a sweep over many costs more and brings more. */
const [SWEEPS_BY_PIECES, LEAST_PATIENCE, MOST_PATIENCE] = [1600, 25, 80];
const STRIKES = 2;

export const startSearch = (prepared: Prepared, seed: number): Search =>
  firstSearch(prepared, seed, prepared.sizes.length > 0 ? SHEET_SHRINK : ROLL_SHRINK);

/**
 * The search some sweeps later; the one given stays as it was. It separates the pieces in a first length, then
 * shortens that and separates again, and near the end of the budget presses the best layout together (overlap
 * minimisation at fixed length with guided local search: Umetani et al. 2009; Gardeyn, Vanden Berghe & Wauters 2025,
 * arXiv:2509.13329, sections 5 to 9).
 */
export function stepSearch(search: Search, { sweeps, progress }: StepBudget): Search {
  let state = ownCopy(search);
  if (state.phase === "exploring" && progress > EXPLORING_ENDS) state = pressed(state, progress);
  const patience = patienceFor(state.pieces.length);
  let field = fieldOf(state);
  for (let k = 0; k < sweeps && state.phase !== "done"; k++) {
    const isRunning = state.attempt.outcome === "running";
    const attempt = isRunning ? sweep(field, state.attempt, patience, state.random) : state.attempt;
    state = { ...state, attempt, sweeps: state.sweeps + 1 };
    if (attempt.outcome === "running") continue;
    state = attempt.outcome === "apart" ? afterSuccess(state, progress) : afterFailure(state, progress);
    field = fieldOf(state);
  }
  return state;
}

/** What a step changes in place, copied. */
const ownCopy = (search: Search): Search => ({
  ...search,
  random: search.random.slice(),
  lie: copyLie(search.lie),
  weights: search.weights.slice(),
});

const patienceFor = (pieces: number): Patience => ({
  sweeps: Math.min(MOST_PATIENCE, Math.max(LEAST_PATIENCE, Math.round(SWEEPS_BY_PIECES / pieces))),
  strikes: STRIKES,
});

function afterSuccess(search: Search, progress: number): Search {
  // Pieces laid in turn may be more than those that were left when a full stock was separated.
  if (search.pieces.length < (search.incumbent?.pieces.length ?? 0)) return { ...search, phase: "done" };
  const found: Search = {
    ...search,
    incumbent: {
      pieces: search.pieces,
      bins: tightened(search, search.bins, search.attempt.leastLie),
      lie: copyLie(search.attempt.leastLie),
    },
    pool: [],
  };
  if (search.phase === "compressing" || progress > EXPLORING_ENDS) return pressed(found, progress);
  const [least, most] = shrinkLimits(search);
  const grown = search.phase === "opening" ? most : Math.min(most, search.shrink * SHRINK_GROWS);
  return shrunk({ ...found, phase: "exploring" }, Math.max(least, grown));
}

function afterFailure(search: Search, progress: number): Search {
  if (search.phase === "opening")
    return widened(search) ?? shrunk({ ...search, phase: "exploring" }, search.shrink);
  if (search.phase === "compressing" || progress > EXPLORING_ENDS) return pressed(search, progress);
  const [least] = shrinkLimits(search);
  return search.shrink > least
    ? shrunk(search, Math.max(least, search.shrink * SHRINK_FALLS))
    : disrupted(search);
}

const shrinkLimits = (search: Search): readonly [least: number, most: number] =>
  isRoll(search) ? [LEAST_ROLL_SHRINK, ROLL_SHRINK] : [LEAST_SHEET_SHRINK, SHEET_SHRINK];

/** The next attempt, shorter by a share, or by the largest that is possible. */
function shrunk(search: Search, share: number): Search {
  const next = shortened({ ...search, shrink: share }, share);
  if (next !== undefined) return next;
  const [least] = shrinkLimits(search);
  return share > least ? shrunk(search, Math.max(least, share * SHRINK_FALLS)) : { ...search, phase: "done" };
}

/** From the best layout, shortened a little less each time as the budget runs out. */
function pressed(search: Search, progress: number): Search {
  const done = Math.min(1, Math.max(0, (progress - EXPLORING_ENDS) / (1 - EXPLORING_ENDS)));
  const share = FIRST_PRESS * (LAST_PRESS / FIRST_PRESS) ** done;
  return shortened({ ...search, phase: "compressing" }, share) ?? { ...search, phase: "done" };
}
