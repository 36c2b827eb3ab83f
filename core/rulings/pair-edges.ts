import { addSpace, at, distanceSpace, dotSpace, type SpacePoint } from "../foundation/index.ts";
import { reverseEdge } from "./compile-edge.ts";
import { findCreases } from "./find-creases.ts";
import { edgePair } from "./knots.ts";
import { pairingNodes } from "./pairing-nodes.ts";
import { placeOnEdge } from "./place-on-edge.ts";
import { sameWayRound } from "./same-way-round.ts";
import { searchPairing } from "./search-pairing.ts";
import { sweepAt } from "./sweep-at.ts";
import { sweepStretches } from "./sweep-stretches.ts";
import type { PairedEdges, PairingSettings, RuledSurface, SpaceEdge } from "./types.ts";

/** Rulings that carry a pairing, about. */
const RULINGS = 96;

/**
 * The ruled sheet between two edges that comes nearest to developable: the pairing of their points with the least twist
 * (and the least bend beyond the foam's limit), in order on both. The second edge is reversed where that makes the
 * closing rulings shorter, so it does not matter which way edges were drawn, nor which is first.
 */
export function pairEdges(first: SpaceEdge, second: SpaceEdge, settings: PairingSettings): RuledSurface {
  const isSecondReversed = runsAgainst(first, second);
  const along = isSecondReversed ? reverseEdge(second) : second;
  const ordered = sameWayRound(first, along);
  const pair = edgePair(ordered.first, ordered.second);
  const count = settings.nodes ?? RULINGS;
  const rulings = ordered.restore(pairingNodes(pair, searchPairing(pair, settings, count), count));
  const paired: PairedEdges = {
    first,
    second: along,
    isSecondReversed,
    lengthSMm: pair.sweptMm,
    rulings,
    side: 1,
  };
  return ruledSurface(
    meanRise(paired) >= 0 === (settings.side !== "down") ? paired : { ...paired, side: -1 },
  );
}

/** A pairing, however it was found, as a sheet. */
export const ruledSurface = (paired: PairedEdges): RuledSurface => ({
  ...paired,
  stretches: sweepStretches(paired),
  creases: findCreases(paired),
});

/** Sums of ruling lengths that differ by less, relative, are equal. */
const EQUAL_RELATIVE = 1e-9;

/** Whether the closing rulings are shorter when the second edge is run the other way; of closed edges those at quarters. */
function runsAgainst(first: SpaceEdge, second: SpaceEdge): boolean {
  for (const part of [0, 0.25]) {
    const [a0, a1] = [pointAtPart(first, part), pointAtPart(first, 1 - part)];
    const [b0, b1] = [pointAtPart(second, part), pointAtPart(second, 1 - part)];
    const same = distanceSpace(a0, b0) + distanceSpace(a1, b1);
    const against = distanceSpace(a0, b1) + distanceSpace(a1, b0);
    if (Math.abs(same - against) > EQUAL_RELATIVE * (same + against)) return against < same;
  }
  return false;
}

const pointAtPart = (edge: SpaceEdge, part: number): SpacePoint =>
  placeOnEdge(edge, part * edge.lengthMm, "before").point;

/** The rise of the sheet's normals, each as heavy as the area it stands for. */
function meanRise(paired: PairedEdges): number {
  return paired.rulings.slice(1).reduce((sum, to, k) => {
    const from = at(paired.rulings, k);
    const { normal, direction, lengthMm, ...sweep } = sweepAt(paired, (from.sMm + to.sMm) / 2, k);
    const motion = addSpace(sweep.firstVelocity, sweep.secondVelocity);
    const across = addSpace(motion, direction, -dotSpace(motion, direction));
    return sum + normal.z * (to.sMm - from.sMm) * lengthMm * Math.sqrt(dotSpace(across, across));
  }, 0);
}
