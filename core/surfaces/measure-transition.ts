import { distanceSpace } from "../foundation/index.ts";
import { areaOfRuled, lengthOnRuled, pointOnRuled } from "../rulings/index.ts";
import type { LengthsInSpace } from "./measure-in-space.ts";
import type { RegionEdge, TransitionSheet } from "./types.ts";

/** The area of a transition in space at the neutral fibre, strip by strip, by quadrature; mm². */
export const transitionAreaInSpace = ({ chart, depths, strips }: TransitionSheet): number =>
  strips.reduce((sum, { shares }) => sum + areaOfRuled(chart.surface, depths.neutralMm, shares), 0);

/**
 * The lengths in space of a region edge of a transition, drawn and on the neutral fibre: along a side or a dividing line
 * by quadrature between two stops of the sweep, along a closing edge that of the ruling.
 */
export function transitionEdgeInSpace(
  { chart, depths }: TransitionSheet,
  { trace }: RegionEdge,
): LengthsInSpace {
  if (trace?.kind !== "ruled") return { drawnMm: 0, atDepthMm: 0 };
  const { surface } = chart;
  const { from, to } = trace;
  if (from.sMm === to.sMm) {
    const lengthMm = distanceSpace(pointOnRuled(surface, from, 0), pointOnRuled(surface, to, 0));
    return { drawnMm: lengthMm, atDepthMm: lengthMm };
  }
  const span = [Math.min(from.sMm, to.sMm), Math.max(from.sMm, to.sMm)] as const;
  return {
    drawnMm: lengthOnRuled(surface, 0, from.t, span),
    atDepthMm: lengthOnRuled(surface, depths.neutralMm, from.t, span),
  };
}
