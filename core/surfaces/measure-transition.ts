import { areaOfRuled, lengthOnRuled, rulingAt } from "../rulings/index.ts";
import type { LengthsInSpace } from "./measure-in-space.ts";
import type { TransitionSheet } from "./types.ts";

/** The area of a transition in space at the neutral fibre, strip by strip, by quadrature; mm². */
export const transitionAreaInSpace = ({ chart, depths, strips }: TransitionSheet): number =>
  strips.reduce((sum, { shares }) => sum + areaOfRuled(chart.surface, depths.neutralMm, shares), 0);

/**
 * The lengths in space of a whole edge of a transition, drawn and on the neutral fibre, all strips together: of its
 * sides and dividing lines by quadrature along them (a dividing line counts once for each strip beside it), of its
 * closing edges those of the rulings.
 */
export function transitionEdgeInSpace(
  { chart, depths, strips }: TransitionSheet,
  edgeId: string,
): LengthsInSpace {
  const { surface } = chart;
  if (edgeId === "start" || edgeId === "end") {
    const { lengthMm } = rulingAt(surface, edgeId === "start" ? 0 : surface.lengthSMm);
    return { drawnMm: lengthMm, atDepthMm: lengthMm };
  }
  const number = Number(edgeId.slice("divide-".length));
  const [t, times] = edgeId === "first" ? [0, 1] : edgeId === "second" ? [1, 1] : [number / strips.length, 2];
  return {
    drawnMm: times * lengthOnRuled(surface, 0, t),
    atDepthMm: times * lengthOnRuled(surface, depths.neutralMm, t),
  };
}
