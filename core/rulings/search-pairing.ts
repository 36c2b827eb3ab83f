import { bandAround } from "./band-around.ts";
import { gridLines } from "./grid-lines.ts";
import { type PathStep, searchGrid, wholeBand } from "./grid-search.ts";
import { type EdgePair, type Knot, knotsOfPath } from "./knots.ts";
import { refineKnots } from "./refine-knots.ts";
import type { BendLimits } from "./ruling-cost.ts";
import { settleKnots } from "./settle-knots.ts";

/** Lines of the first search on each edge, and how many times finer the second one is. */
const COARSE_LINES = 64;
const FINER = 4;

/**
 * The pairing of two edges as knots: a shortest path over a grid, again over a finer one around it, knots laid on that
 * path, moved to the least of the same cost and settled there.
 */
export function searchPairing(pair: EdgePair, limits: BendLimits, count: number): readonly Knot[] {
  const path = finerPath(pair, coarsePath(pair, limits), limits);
  const step = 1 / (COARSE_LINES * FINER * 2);
  return settleKnots(pair, refineKnots(pair, knotsOfPath(pair, path, count), step, limits));
}

function coarsePath({ first, second }: EdgePair, limits: BendLimits): readonly PathStep[] {
  const [a, b] = [gridLines(first, COARSE_LINES), gridLines(second, COARSE_LINES)];
  return searchGrid(a, b, wholeBand(a, b), limits);
}

function finerPath(
  { first, second }: EdgePair,
  path: readonly PathStep[],
  limits: BendLimits,
): readonly PathStep[] {
  const [a, b] = [gridLines(first, COARSE_LINES * FINER), gridLines(second, COARSE_LINES * FINER)];
  const reach = { firstMm: first.lengthMm / COARSE_LINES, secondMm: second.lengthMm / COARSE_LINES };
  return searchGrid(a, b, bandAround(path, a, b, reach), limits);
}
