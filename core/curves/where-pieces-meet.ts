import { COINCIDENT_POINTS_MM, type Vec2 } from "../foundation/index.ts";
import { meetPieces, readyToMeet } from "./meet-pieces.ts";
import { boxOfPiece } from "./piece-box.ts";
import { pointOnPiece } from "./pieces.ts";
import type { CurvePiece } from "./types.ts";

/** The points where two pieces cross, touch, or one ends on the other; ends that they share are not among them. */
export function wherePiecesMeet(one: CurvePiece, other: CurvePiece): readonly Vec2[] {
  const [a, b] = [readyToMeet(one, boxOfPiece(one)), readyToMeet(other, boxOfPiece(other))];
  return meetPieces(a, b, COINCIDENT_POINTS_MM).map((meeting) => pointOnPiece(one, meeting.a));
}
