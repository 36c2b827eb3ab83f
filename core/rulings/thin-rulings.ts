import { at, dotSpace } from "../foundation/index.ts";
import { placeOnEdge } from "./place-on-edge.ts";
import type { PairingNode, SpaceEdge } from "./types.ts";

/** What the pairing may change by when a ruling is left out, mm: under anything that is measured on a sheet. */
const SAME_PAIRING_MM = 1e-9;
/** Rulings stay this close, as a share of the sweep, however smooth the pairing is. */
const MOST_SHARE = 1 / 24;
/** Neither edge turns by more than this between two rulings (its cosine). */
const MOST_TURN_COSINE = Math.cos(0.03);

/**
 * A pairing without the rulings that its neighbours' cubic already holds: flat and evenly paired stretches need few, and
 * everything that is swept along the sheet takes as long as there are rulings.
 */
export function thinRulings(
  rulings: readonly PairingNode[],
  first: SpaceEdge,
  second: SpaceEdge,
): readonly PairingNode[] {
  const lengthMm = at(rulings, -1).sMm - at(rulings, 0).sMm;
  const kept: PairingNode[] = [at(rulings, 0)];
  let start = 0;
  for (let end = 2; end < rulings.length; end++) {
    const [from, to] = [at(rulings, start), at(rulings, end)];
    const between = rulings.slice(start + 1, end);
    const isHeld =
      to.sMm - from.sMm <= MOST_SHARE * lengthMm &&
      between.every(
        (node) => node.fanAfter === from.fanAfter && isSmooth(node) && isOnCubic(from, to, node),
      ) &&
      turnsLittle(first, from.firstMm, to.firstMm) &&
      turnsLittle(second, from.secondMm, to.secondMm);
    if (isHeld) continue;
    start = end - 1;
    kept.push(at(rulings, start));
  }
  kept.push(at(rulings, -1));
  return kept;
}

const isSmooth = ({ slopeBefore, slopeAfter }: PairingNode): boolean =>
  Math.abs(slopeBefore - slopeAfter) < 1e-9;

/** Whether a ruling between two lies on the cubic of both (Hermite), and so would come out the same without it. */
function isOnCubic(from: PairingNode, to: PairingNode, node: PairingNode): boolean {
  const span = to.sMm - from.sMm;
  const x = (node.sMm - from.sMm) / span;
  const rise = to.firstMm - from.firstMm;
  const [m0, m1] = [from.slopeAfter * span, to.slopeBefore * span];
  const value = from.firstMm + x * (m0 + x * (3 * rise - 2 * m0 - m1 + x * (m0 + m1 - 2 * rise)));
  return Math.abs(value - node.firstMm) <= SAME_PAIRING_MM;
}

function turnsLittle(edge: SpaceEdge, fromMm: number, toMm: number): boolean {
  if (edge.lengthMm === 0 || fromMm === toMm) return true;
  const middle = placeOnEdge(edge, (fromMm + toMm) / 2).tangent;
  return [placeOnEdge(edge, fromMm, "after"), placeOnEdge(edge, toMm, "before")].every(
    ({ tangent }) => dotSpace(tangent, middle) >= MOST_TURN_COSINE,
  );
}
