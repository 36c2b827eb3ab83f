import { type Curve, pointOnPiece } from "../curves/index.ts";
import type { PlanPoint } from "../foundation/index.ts";
import { polygonsContain } from "./inside-polygons.ts";
import type { TransitionSheet } from "./types.ts";

/** Places along each piece of an opening at which a transition is looked for. */
const LOOKS = 48;

/**
 * Whether an opening lies over a transition in plan: some of its edge lies on the transition, or some of the
 * transition's edge inside it.
 */
export function liesOverTransition(opening: Curve, { planLoops }: TransitionSheet): boolean {
  const edge = opening.pieces.flatMap((piece) =>
    Array.from({ length: LOOKS }, (_, i): PlanPoint => {
      const [x, y] = pointOnPiece(piece, i / LOOKS);
      return { x, y };
    }),
  );
  const inside = (polygons: readonly (readonly PlanPoint[])[], points: readonly PlanPoint[]): boolean =>
    points.some((p) => polygonsContain(polygons, p));
  return inside(planLoops, edge) || inside([edge], planLoops.flat());
}
