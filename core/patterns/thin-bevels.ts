import { at } from "../foundation/index.ts";
import type { BevelStation } from "./types.ts";

/** A bevel is told to this: a fiftieth of a degree. */
const BEVEL_TOLD_RAD = 3e-4;

/**
 * As few stations as tell a bevel along an edge: both ends, and wherever the straight between two kept ones would miss
 * by more than a builder can set (Ramer 1972, Douglas and Peucker 1973, on the bevel alone).
 */
export function thinBevels(all: readonly BevelStation[]): readonly BevelStation[] {
  const kept = all.map((_, i) => i === 0 || i === all.length - 1);
  const open: (readonly [number, number])[] = [[0, all.length - 1]];
  for (let span = open.pop(); span; span = open.pop()) {
    const [first, last] = span;
    let [worst, missRad] = [-1, BEVEL_TOLD_RAD];
    for (let i = first + 1; i < last; i++) {
      const miss = missAt(at(all, first), at(all, i), at(all, last));
      if (miss > missRad) [worst, missRad] = [i, miss];
    }
    if (worst < 0) continue;
    kept[worst] = true;
    open.push([first, worst], [worst, last]);
  }
  return all.filter((_, i) => kept[i]);
}

function missAt(a: BevelStation, b: BevelStation, c: BevelStation): number {
  const share = (b.alongMm - a.alongMm) / (c.alongMm - a.alongMm || 1);
  return Math.abs(b.bevelRad - a.bevelRad - (c.bevelRad - a.bevelRad) * share);
}
