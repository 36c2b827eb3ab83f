import { addSpace, assert, distanceSpace, dotSpace, type SpacePoint } from "../foundation/index.ts";
import { reverseEdge } from "./compile-edge.ts";
import { findCreases } from "./find-creases.ts";
import { edgePair } from "./knots.ts";
import { pairingNodes } from "./pairing-nodes.ts";
import { placeOnEdge } from "./place-on-edge.ts";
import type { BendLimits } from "./ruling-cost.ts";
import { sameWayRound } from "./same-way-round.ts";
import { searchPairing } from "./search-pairing.ts";
import { sweepAt, sweptPoint } from "./sweep-at.ts";
import { SWEEP } from "./sweep-ruling.ts";
import { sweepStretches } from "./sweep-stretches.ts";
import { thinRulings } from "./thin-rulings.ts";
import type { PairedEdges, PairingSettings, RuledSurface, SpaceEdge } from "./types.ts";

/** Rulings that carry a pairing, about. */
const RULINGS = 96;

/**
 * The ruled sheet between two edges that comes nearest to developable: the pairing of their points with the least twist
 * (and the least bend beyond the foam's limit), in order on both. The second edge is reversed where that makes the
 * closing rulings shorter, so it does not matter which way edges were drawn, nor which is first.
 * One edge may be a point.
 */
export function pairEdges(first: SpaceEdge, second: SpaceEdge, settings: PairingSettings): RuledSurface {
  assert(first.lengthMm + second.lengthMm > 0, "one of the edges has a length");
  const isSecondReversed = runsAgainst(first, second);
  const along = isSecondReversed ? reverseEdge(second) : second;
  const ordered = sameWayRound(first, along);
  const pair = edgePair(ordered.first, ordered.second);
  const count = settings.nodes ?? RULINGS;
  const all = ordered.restore(
    pairingNodes(pair, searchPairing(pair, limitsOf(first, along, settings), count), count),
  );
  const rulings = settings.nodes === undefined ? thinRulings(all, first, along) : all;
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

/** Looks across the sheet by which the edges' distance is told. */
const SPAN_LOOKS = [0, 0.25, 0.5, 0.75, 1];

function limitsOf(first: SpaceEdge, second: SpaceEdge, settings: PairingSettings): BendLimits {
  if (settings.aim !== "strain") return settings;
  const spans = SPAN_LOOKS.map((part) => distanceSpace(pointAtPart(first, part), pointAtPart(second, part)));
  return { ...settings, strainSpanMm: Math.max(1, spans.reduce((sum, mm) => sum + mm, 0) / spans.length) };
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

/** Rulings that tell which side of a sheet is up. */
const RISE_RULINGS = 24;

/** The rise of the sheet's normals at even steps, each as heavy as the area it stands for. */
function meanRise(paired: PairedEdges): number {
  let rise = 0;
  for (let k = 0; k < RISE_RULINGS; k++) {
    const { numbers, normal, direction, lengthMm } = sweepAt(
      paired,
      ((k + 0.5) / RISE_RULINGS) * paired.lengthSMm,
    );
    const motion = addSpace(sweptPoint(numbers, SWEEP.fromVelocity), sweptPoint(numbers, SWEEP.toVelocity));
    const across = addSpace(motion, direction, -dotSpace(motion, direction));
    rise += normal.z * lengthMm * Math.sqrt(dotSpace(across, across));
  }
  return rise;
}
