import { cross2, dot2, SMOOTH_FOLD_RAD, type Vec2 } from "../foundation/index.ts";
import { frameOnPiece } from "./pieces.ts";
import type { CurvePiece } from "./types.ts";

/** A place where pieces that lie end to end change direction at once. */
export interface Kink {
  readonly at: Vec2;
  /** Positive turning left. */
  readonly turnRad: number;
}

/** The kinks between pieces of which one at least is curved; corners between straight lines are meant. */
export function kinksOf(pieces: readonly CurvePiece[], closed: boolean): readonly Kink[] {
  return pieces.flatMap((piece, index): readonly Kink[] => {
    const next = pieces[index + 1] ?? (closed ? pieces[0] : undefined);
    if (!next || next === piece || (piece.kind === "line" && next.kind === "line")) return [];
    const [before, after] = [frameOnPiece(piece, 1).tangent, frameOnPiece(next, 0)];
    const turnRad = Math.atan2(cross2(before, after.tangent), dot2(before, after.tangent));
    return Math.abs(turnRad) > SMOOTH_FOLD_RAD ? [{ at: after.at, turnRad }] : [];
  });
}
