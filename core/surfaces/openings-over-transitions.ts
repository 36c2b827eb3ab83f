import { pointOnPiece } from "../curves/index.ts";
import type { PlanPoint } from "../foundation/index.ts";
import type { DrawnPiece } from "./drawn-loops.ts";
import { polygonsContain } from "./inside-polygons.ts";

/** Places along each piece of an opening at which a transition is looked for. */
const LOOKS = 48;

/**
 * Whether openings lie over the outline of a transition in plan: some of their edge lies in it, or some of the outline
 * inside them.
 */
export const lieOver = (
  openings: readonly (readonly DrawnPiece[])[],
  outline: readonly PlanPoint[],
): boolean =>
  openings.some((opening) => {
    const edge = opening.flatMap(({ piece, reversed }) =>
      Array.from({ length: LOOKS }, (_, i): PlanPoint => {
        const [x, y] = pointOnPiece(piece, reversed ? 1 - i / LOOKS : i / LOOKS);
        return { x, y };
      }),
    );
    const inside = (polygon: readonly PlanPoint[], points: readonly PlanPoint[]): boolean =>
      points.some((p) => polygonsContain([polygon], p));
    return inside(outline, edge) || inside(edge, outline);
  });
