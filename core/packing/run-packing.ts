import { bestLayout, isPackingDone, type Packing, startPacking, stepPacking } from "./packing.ts";
import { type LayAnew, onSmallerSheets } from "./smaller-sheets.ts";
import type { Layout, PackingProblem } from "./types.ts";

/** When a run ends: after so many sweeps, or after so long by a clock that its caller hands in. */
export type RunLimit =
  | { readonly kind: "sweeps"; readonly sweeps: number }
  | { readonly kind: "time"; readonly milliseconds: number; readonly nowMs: () => number };

/** A run between two of its steps. */
export interface PackingRun {
  readonly packing: Packing;
  readonly layout: Layout | undefined;
  /** How much of the limit is spent, from 0 to 1. */
  readonly progress: number;
}

/** A step is so many sweeps, the last one of a limit in sweeps fewer. */
const SWEEPS_PER_STEP = 8;
/** Where sheets have several sizes: the share of the limit for the search, and for each try on smaller sheets. */
const [SEARCH_SHARE, TRY_SHARE] = [0.75, 0.08];

/**
 * A whole run, step by step: gives way to its caller after each, with the best layout so far, so that it can be shown,
 * stopped or taken up again at any time; at its end the layout goes onto smaller sheets where there are any that take
 * it. With a limit in sweeps it gives the same on every machine.
 */
export function* runPacking(
  problem: PackingProblem,
  seed: number,
  limit: RunLimit,
): Generator<PackingRun, void> {
  const { stock } = problem;
  if (stock.kind === "roll" || stock.sizes.length < 2) {
    yield* searchWithin(problem, seed, limit);
    return;
  }
  let last: PackingRun | undefined;
  for (const run of searchWithin(problem, seed, shareOf(limit, SEARCH_SHARE))) {
    last = run;
    yield { ...run, progress: run.progress * SEARCH_SHARE };
  }
  if (last === undefined) return;
  const layAnew: LayAnew = (part) => lastLayout(searchWithin(part, seed, shareOf(limit, TRY_SHARE)));
  const layout = last.layout && onSmallerSheets(problem, last.layout, layAnew);
  yield { ...last, layout, progress: 1 };
}

/** The layout at the end of a run; undefined where its limit was too small for a first one. */
export const packWithin = (problem: PackingProblem, seed: number, limit: RunLimit): Layout | undefined =>
  lastLayout(runPacking(problem, seed, limit));

function lastLayout(runs: Iterable<PackingRun>): Layout | undefined {
  let layout: Layout | undefined;
  for (const run of runs) layout = run.layout;
  return layout;
}

const shareOf = (limit: RunLimit, share: number): RunLimit =>
  limit.kind === "time"
    ? { ...limit, milliseconds: limit.milliseconds * share }
    : { ...limit, sweeps: Math.ceil(limit.sweeps * share) };

function* searchWithin(problem: PackingProblem, seed: number, limit: RunLimit): Generator<PackingRun, void> {
  let packing = startPacking(problem, seed);
  const startMs = limit.kind === "time" ? limit.nowMs() : 0;
  for (let sweeps = 0; ; sweeps += SWEEPS_PER_STEP) {
    const progress =
      limit.kind === "time" ? (limit.nowMs() - startMs) / limit.milliseconds : sweeps / limit.sweeps;
    const isOver = progress >= 1 || isPackingDone(packing);
    yield { packing, layout: bestLayout(packing), progress: isOver ? 1 : progress };
    if (isOver) return;
    const left = limit.kind === "time" ? SWEEPS_PER_STEP : limit.sweeps - sweeps;
    packing = stepPacking(packing, { sweeps: Math.min(SWEEPS_PER_STEP, left), progress });
  }
}
