import { bestLayout, isPackingDone, type Packing, startPacking, stepPacking } from "./packing.ts";
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

const MOST_SWEEPS_PER_STEP = 8;

/**
 * A whole run, step by step: gives way to its caller after each, with the best layout so far, so that it can be shown,
 * stopped or taken up again at any time. With a limit in sweeps it gives the same on every machine.
 */
export function* runPacking(
  problem: PackingProblem,
  seed: number,
  limit: RunLimit,
): Generator<PackingRun, void> {
  let packing = startPacking(problem, seed);
  const startMs = limit.kind === "time" ? limit.nowMs() : 0;
  for (let sweeps = 0; ; sweeps += MOST_SWEEPS_PER_STEP) {
    const progress =
      limit.kind === "time" ? (limit.nowMs() - startMs) / limit.milliseconds : sweeps / limit.sweeps;
    const isOver = progress >= 1 || isPackingDone(packing);
    yield { packing, layout: bestLayout(packing), progress: isOver ? 1 : progress };
    if (isOver) return;
    const left = limit.kind === "time" ? MOST_SWEEPS_PER_STEP : limit.sweeps - sweeps;
    packing = stepPacking(packing, { sweeps: Math.min(MOST_SWEEPS_PER_STEP, left), progress });
  }
}

/** The layout at the end of a run; undefined where its limit was too small for a first one. */
export function packWithin(problem: PackingProblem, seed: number, limit: RunLimit): Layout | undefined {
  let layout: Layout | undefined;
  for (const run of runPacking(problem, seed, limit)) layout = run.layout;
  return layout;
}
