import type { PathStep } from "./grid-search.ts";
import type { EdgePair } from "./knots.ts";
import { evaluateEnds, openEnds } from "./refine-knots.ts";
import { type BendLimits, rulingCost } from "./ruling-cost.ts";

/** Places that are looked at. */
const LOOKS = 48;
/** A cost this small is rounding of a sheet without any twist, rad². */
const NOTHING = 1e-18;

/**
 * The pairing of equal fractions as a path, where it costs nothing: no pairing costs less, and none is more even. Such
 * are flat strips and sheets bent over parallel rulings; undefined for others, and where an edge has a corner.
 */
export function evenPairing(pair: EdgePair, limits: BendLimits): readonly PathStep[] | undefined {
  const { first, second } = pair;
  if (first.lengthMm === 0 || second.lengthMm === 0) return undefined;
  if (first.cornersMm.length + second.cornersMm.length > 0) return undefined;
  const ends = openEnds();
  const steps: PathStep[] = [];
  for (let k = 0; k <= LOOKS; k++) {
    const place = { firstMm: (first.lengthMm * k) / LOOKS, secondMm: (second.lengthMm * k) / LOOKS };
    evaluateEnds(pair, place, "after", ends);
    if (rulingCost(ends, limits) > NOTHING) return undefined;
    steps.push({ ...place, arrival: "none" });
  }
  return steps;
}
