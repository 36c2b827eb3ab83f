import { addSpace, at, bracketedRoot, crossSpace, distanceSpace, dotSpace } from "../foundation/index.ts";
import { reverseEdge } from "./compile-edge.ts";
import { edgePair } from "./knots.ts";
import { DEVELOPABLE_TWIST_RAD } from "./limits.ts";
import { intervalAt, pairingAt } from "./pairing-at.ts";
import { pairingNodes } from "./pairing-nodes.ts";
import { placeOnEdge } from "./place-on-edge.ts";
import { searchPairing } from "./search-pairing.ts";
import { sweepAt } from "./sweep-at.ts";
import type { Crease, PairingNode, PairingSettings, RuledSurface, SpaceEdge } from "./types.ts";

/** Rulings that carry a pairing, about. */
const RULINGS = 96;
/** Stops nearer than this are one. */
const ONE_STOP_MM = 1e-6;

/**
 * The ruled sheet between two edges that comes nearest to developable: the pairing of their points with the least twist
 * (and the least bend beyond the foam's limit), in order on both. The second edge is reversed where that makes the
 * closing rulings shorter, so it does not matter which way edges were drawn, nor which is first.
 */
export function pairEdges(first: SpaceEdge, second: SpaceEdge, settings: PairingSettings): RuledSurface {
  const isSecondReversed = runsAgainst(first, second);
  const pair = edgePair(first, isSecondReversed ? reverseEdge(second) : second);
  const count = settings.nodes ?? RULINGS;
  const rulings = pairingNodes(pair, searchPairing(pair, settings, count), count);
  const bare: RuledSurface = {
    first: pair.first,
    second: pair.second,
    isSecondReversed,
    lengthSMm: pair.sweptMm,
    rulings,
    stopsMm: [],
    creases: [],
    side: 1,
  };
  const side = meanRise(bare) >= 0 === (settings.side !== "down") ? 1 : -1;
  const sided: RuledSurface = { ...bare, stopsMm: stopsOf(bare), side };
  return { ...sided, creases: creasesOf(sided) };
}

/** Whether the closing rulings are shorter when the second edge is run the other way. */
function runsAgainst(first: SpaceEdge, second: SpaceEdge): boolean {
  const [a0, a1] = [placeOnEdge(first, 0).point, placeOnEdge(first, first.lengthMm).point];
  const [b0, b1] = [placeOnEdge(second, 0).point, placeOnEdge(second, second.lengthMm).point];
  return distanceSpace(a0, b1) + distanceSpace(a1, b0) < distanceSpace(a0, b0) + distanceSpace(a1, b1);
}

/** The rise of the sheet's normals, each as heavy as the area it stands for. */
function meanRise(surface: RuledSurface): number {
  return surface.rulings.slice(1).reduce((sum, to, k) => {
    const from = at(surface.rulings, k);
    const { normal, direction, lengthMm, firstVelocity, secondVelocity } = sweepAt(
      surface,
      (from.sMm + to.sMm) / 2,
      k,
    );
    const motion = addSpace(firstVelocity, secondVelocity);
    const across = addSpace(motion, direction, -dotSpace(motion, direction));
    return sum + normal.z * (to.sMm - from.sMm) * lengthMm * Math.sqrt(dotSpace(across, across));
  }, 0);
}

/** Every ruling, and every border of pieces on either edge. */
function stopsOf(surface: RuledSurface): readonly number[] {
  const { rulings, first, second } = surface;
  const own = rulings.map(({ sMm }) => sMm);
  const onFirst = first.bordersMm.map((mm) => crossingOf(surface, "firstMm", mm));
  const onSecond = second.bordersMm.map((mm) => crossingOf(surface, "secondMm", mm));
  const borders = [...onFirst, ...onSecond].flat().filter((sMm) => sMm > 0 && sMm < surface.lengthSMm);
  const sorted = [
    ...own.map((sMm) => ({ sMm, isOwn: true })),
    ...borders.map((sMm) => ({ sMm, isOwn: false })),
  ].sort((a, b) => a.sMm - b.sMm);
  return sorted.flatMap(({ sMm, isOwn }, k) => {
    const isNear = (other: number | undefined) => other !== undefined && Math.abs(other - sMm) < ONE_STOP_MM;
    return !isOwn && (isNear(sorted[k - 1]?.sMm) || isNear(sorted[k + 1]?.sMm)) ? [] : [sMm];
  });
}

/** Where the sweep passes a place of one edge, between two rulings; none where it rests there in a fan. */
function crossingOf(surface: RuledSurface, key: "firstMm" | "secondMm", mm: number): readonly number[] {
  const { rulings } = surface;
  let [low, high] = [0, rulings.length - 1];
  while (low + 1 < high) {
    const middle = (low + high) >> 1;
    if (at(rulings, middle)[key] <= mm) low = middle;
    else high = middle;
  }
  const [from, to]: readonly [PairingNode, PairingNode] = [at(rulings, low), at(rulings, high)];
  if (!(from[key] < mm && mm < to[key])) return [];
  return [bracketedRoot((sMm) => pairingAt(surface, low, sMm)[key] - mm, from.sMm, to.sMm)];
}

function creasesOf(surface: RuledSurface): readonly Crease[] {
  return surface.rulings.slice(1, -1).flatMap(({ sMm, firstMm, secondMm }) => {
    const interval = intervalAt(surface, sMm);
    const [before, after] = [sweepAt(surface, sMm, interval - 1), sweepAt(surface, sMm, interval)];
    const angleRad = Math.max(
      angleBetween(before.firstNormal, after.firstNormal),
      angleBetween(before.secondNormal, after.secondNormal),
    );
    return angleRad > DEVELOPABLE_TWIST_RAD ? [{ sMm, firstMm, secondMm, angleRad }] : [];
  });
}

function angleBetween(a: Parameters<typeof dotSpace>[0], b: Parameters<typeof dotSpace>[0]): number {
  const cross = crossSpace(a, b);
  return Math.atan2(Math.sqrt(dotSpace(cross, cross)), dotSpace(a, b));
}
