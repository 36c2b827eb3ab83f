import { addSpace, at, type SpacePoint } from "../foundation/index.ts";
import { reverseEdge } from "./compile-edge.ts";
import { placeOnEdge } from "./place-on-edge.ts";
import type { FanApex, PairingNode, SpaceEdge } from "./types.ts";

/** Two edges in the order and the direction in which they are paired, and the way back to those given. */
export interface SameWayRound {
  readonly first: SpaceEdge;
  readonly second: SpaceEdge;
  readonly restore: (rulings: readonly PairingNode[]) => readonly PairingNode[];
}

/**
 * Two edges that run the same way, put into an order and a direction that depend on where they lie and not on how they
 * were given: so rounding, and ties between equally good pairings, come out the same whichever edge is first and
 * whichever way both run.
 */
export function sameWayRound(first: SpaceEdge, second: SpaceEdge): SameWayRound {
  const [a0, a1, b0, b1] = [startOf(first), endOf(first), startOf(second), endOf(second)];
  const isReversed = comesBefore(addSpace(a1, b1), addSpace(a0, b0));
  const isSwapped = comesBefore(addSpace(b0, b1), addSpace(a0, a1));
  const [one, two] = isReversed ? [reverseEdge(first), reverseEdge(second)] : [first, second];
  return {
    first: isSwapped ? two : one,
    second: isSwapped ? one : two,
    restore: (rulings) => {
      const unswapped = isSwapped ? rulings.map(swap) : rulings;
      return isReversed ? reverse(unswapped, first.lengthMm, second.lengthMm) : unswapped;
    },
  };
}

const startOf = (edge: SpaceEdge): SpacePoint => placeOnEdge(edge, 0).point;
const endOf = (edge: SpaceEdge): SpacePoint => placeOnEdge(edge, edge.lengthMm, "before").point;

/** Further forward; where level, further left; where that is level too, lower. */
function comesBefore(a: SpacePoint, b: SpacePoint): boolean {
  if (a.x !== b.x) return a.x < b.x;
  return a.y === b.y ? a.z < b.z : a.y < b.y;
}

const OTHER: Readonly<Record<FanApex, FanApex>> = { none: "none", first: "second", second: "first" };

const swap = (ruling: PairingNode): PairingNode => ({
  sMm: ruling.sMm,
  firstMm: ruling.secondMm,
  secondMm: ruling.firstMm,
  slopeBefore: 2 - ruling.slopeBefore,
  slopeAfter: 2 - ruling.slopeAfter,
  fanAfter: OTHER[ruling.fanAfter],
});

function reverse(rulings: readonly PairingNode[], firstMm: number, secondMm: number): readonly PairingNode[] {
  const last = rulings.length - 1;
  return rulings.map((_, k) => {
    const ruling = at(rulings, last - k);
    return {
      sMm: k === 0 ? 0 : (firstMm + secondMm) / 2 - ruling.sMm,
      firstMm: firstMm - ruling.firstMm,
      secondMm: secondMm - ruling.secondMm,
      slopeBefore: ruling.slopeAfter,
      slopeAfter: ruling.slopeBefore,
      fanAfter: k === last ? "none" : at(rulings, last - k - 1).fanAfter,
    };
  });
}
