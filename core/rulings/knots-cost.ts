import { at } from "../foundation/index.ts";
import { creaseAngle } from "./crease-angle.ts";
import type { EdgePair, Knot } from "./knots.ts";
import { evaluateEnds, openEnds } from "./refine-knots.ts";
import { type BendLimits, bendOf, fanCost, rulingCost, twistOf } from "./ruling-cost.ts";
import { creaseCharge, LEAST_CREASE_RAD } from "./search-charges.ts";

/** What a pairing costs, without the pull toward even spacing, and its worst twist. */
export interface KnotsCost {
  /** (twist² + bend²) by swept share, and the charge for creases; rad². */
  readonly cost: number;
  readonly bendCost: number;
  readonly maxTwistRad: number;
  readonly maxCreaseRad: number;
}

/** The cost of a pairing given by knots, by the trapezoidal rule between them. */
export function costOfKnots(pair: EdgePair, knots: readonly Knot[], limits: BendLimits): KnotsCost {
  const [before, after] = [openEnds(), openEnds()];
  let [cost, bendCost, maxTwistRad, maxCreaseRad] = [0, 0, 0, 0];
  knots.forEach((knot, k) => {
    const [last, next] = [knots[k - 1], knots[k + 1]];
    evaluateEnds(pair, knot, "before", before);
    evaluateEnds(pair, knot, "after", after);
    for (const [other, fan, ends] of [
      [last, last?.fanAfter ?? "none", before],
      [next, knot.fanAfter, after],
    ] as const) {
      if (other === undefined) continue;
      const share =
        (Math.abs(other.firstMm - knot.firstMm) + Math.abs(other.secondMm - knot.secondMm)) /
        (4 * pair.sweptMm);
      const twist =
        fan === "none" ? twistOf(ends.first, ends.firstOffset, ends.second, ends.secondOffset) : 0;
      const bend = bendOf(ends, twist, fan, limits);
      if (share > 0) maxTwistRad = Math.max(maxTwistRad, Math.abs(twist));
      bendCost += share * bend * bend;
      cost += share * (fan === "none" ? rulingCost(ends, limits) : fanCost(ends, fan, limits));
    }
    if (last === undefined || next === undefined || !knot.isApex) return;
    const angle = creaseAngle(
      { ends: before, fan: last.fanAfter },
      { ends: after, fan: at(knots, k).fanAfter },
    );
    maxCreaseRad = Math.max(maxCreaseRad, angle);
    cost += creaseCharge(angle, LEAST_CREASE_RAD);
  });
  return { cost, bendCost, maxTwistRad, maxCreaseRad };
}
