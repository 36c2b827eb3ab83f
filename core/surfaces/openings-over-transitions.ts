import { flattenPiece, pointOnPiece } from "../curves/index.ts";
import type { PlanPoint } from "../foundation/index.ts";
import type { DrawnPiece } from "./drawn-loops.ts";
import { polygonsContain } from "./inside-polygons.ts";
import { boxOf } from "./plan-polygons.ts";

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

/** Chords of an opening and of a transition's outline lie nearer to their curves than half of this. */
const NEAR_MM = 4;
const BOX_CHORD = { chordErrorMm: NEAR_MM / 4, turnRad: Math.PI };

/** Whether openings may take something from what lies in a box in plan; most lie somewhere else, and are told so soon. */
export function comeNear(
  openings: readonly (readonly DrawnPiece[])[],
  [least, most]: readonly [PlanPoint, PlanPoint],
): boolean {
  return openings.some((opening) => {
    const points = opening.flatMap(({ piece }) =>
      flattenPiece(piece, BOX_CHORD).map((t): PlanPoint => {
        const [x, y] = pointOnPiece(piece, t);
        return { x, y };
      }),
    );
    const [from, to] = boxOf(points);
    return (
      from.x <= most.x + NEAR_MM &&
      to.x >= least.x - NEAR_MM &&
      from.y <= most.y + NEAR_MM &&
      to.y >= least.y - NEAR_MM
    );
  });
}
