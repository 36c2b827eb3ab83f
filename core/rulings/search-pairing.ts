import { bandAround } from "./band-around.ts";
import { evenPairing } from "./even-pairing.ts";
import { gridLines } from "./grid-lines.ts";
import { type GridSettings, searchGrid, wholeBand } from "./grid-search.ts";
import { type EdgePair, type Knot, knotsOfPath } from "./knots.ts";
import { costOfKnots } from "./knots-cost.ts";
import { DEVELOPABLE_TWIST_RAD } from "./limits.ts";
import { refineKnots } from "./refine-knots.ts";
import type { BendLimits } from "./ruling-cost.ts";
import { LEAST_CREASE_RAD, SPACING_PULL } from "./search-charges.ts";
import { settleKnots } from "./settle-knots.ts";

/** Lines of the first search on each edge, and how many times finer the second one is. */
const COARSE_LINES = 48;
const FINER = 4;
/** First step of the refinement, in progress: half a step of the finer grid. */
const FIRST_STEP = 1 / (COARSE_LINES * FINER * 2);
/**
 * What a developable pairing near the cheapest one may cost more: its bend is then that of the shape itself, and trading
 * some of it for twist would only spoil an exact sheet.
 */
const DEVELOPABLE_MAY_COST = 1.5;

/**
 * The pairing of two edges as knots: the cheapest one. Where bend makes up most of its cost, and a developable pairing
 * costs much the same, that one: not where twist makes up more, as it is not for the bend's sake then. With the aim
 * "strain" no ruling is set to a root: the least strain is what is asked for.
 */
export function searchPairing(pair: EdgePair, limits: BendLimits, count: number): readonly Knot[] {
  const even = evenPairing(pair, limits);
  if (even) return knotsOfPath(pair, even, count);
  const cheapest = cheapestPairing(pair, limits, count);
  if (limits.strainSpanMm !== undefined) return cheapest;
  const { cost, bendCost } = costOfKnots(pair, cheapest, limits);
  if (bendCost === 0 || cost > 2 * bendCost) return cheapest;
  const exact = cheapestPairing(pair, { ...limits, leastRadiusMm: 0 }, count);
  const other = costOfKnots(pair, exact, limits);
  const isDevelopable = Math.max(other.maxTwistRad, other.maxCreaseRad) < DEVELOPABLE_TWIST_RAD;
  return isDevelopable && other.cost <= DEVELOPABLE_MAY_COST * cost ? exact : cheapest;
}

/**
 * What a search over a coarse grid takes for no crease, in radians by step, from lenient to strict: where the sheet's
 * planes turn fast from ruling to ruling, a grid cannot place a fan's border well enough to see that it has no crease.
 */
const LENIENCES = [2, 0.5, 0] as const;
/** Edges with more corners than this are runs of lines: the sheet folds at each of them, so one search has to do. */
const MOST_CORNERS = 8;
const MIDDLE_LENIENCE = [0.5] as const;
/** What a pairing may cost more than the grid promised. */
const MAY_MISS = 1.02;

/**
 * A shortest path over a grid, again over a finer one around it, knots laid on that path, moved to the least of the same
 * cost and settled there. A lenient grid promises at most what any pairing costs; where the pairing that comes of it is
 * much dearer, a crease turned out to be real: stricter grids are searched too, and the cheapest pairing is taken.
 */
function cheapestPairing(pair: EdgePair, limits: BendLimits, count: number): readonly Knot[] {
  let best: readonly Knot[] = [];
  let bestCost = Number.POSITIVE_INFINITY;
  const corners = pair.first.cornersMm.length + pair.second.cornersMm.length;
  for (const lenience of corners > MOST_CORNERS ? MIDDLE_LENIENCE : LENIENCES) {
    const leastCreaseRad = Math.max(LEAST_CREASE_RAD, lenience / COARSE_LINES);
    const [promised, knots] = pairingOverGrid(pair, { limits, leastCreaseRad }, count);
    const { cost } = costOfKnots(pair, knots, limits);
    if (cost < bestCost) [best, bestCost] = [knots, cost];
    if (bestCost <= MAY_MISS * promised + SPACING_PULL) break;
  }
  return best;
}

function pairingOverGrid(
  pair: EdgePair,
  settings: GridSettings,
  count: number,
): readonly [promised: number, knots: readonly Knot[]] {
  const { first, second } = pair;
  const [a, b] = [gridLines(first, COARSE_LINES), gridLines(second, COARSE_LINES)];
  const coarse = searchGrid(a, b, wholeBand(a, b), settings);
  const [c, d] = [gridLines(first, COARSE_LINES * FINER), gridLines(second, COARSE_LINES * FINER)];
  const reach = { firstMm: first.lengthMm / COARSE_LINES, secondMm: second.lengthMm / COARSE_LINES };
  const leastCreaseRad = Math.max(LEAST_CREASE_RAD, settings.leastCreaseRad / FINER);
  const fine = searchGrid(c, d, bandAround(coarse.steps, c, d, reach), { ...settings, leastCreaseRad });
  const knots = knotsOfPath(pair, fine.steps, count);
  const { limits } = settings;
  const refined = refineKnots(pair, knots, FIRST_STEP, limits);
  return [coarse.cost, limits.strainSpanMm === undefined ? settleKnots(pair, refined, limits) : refined];
}
