import type { Vec2 } from "../foundation/index.ts";
import { frameAtLength, toCurve } from "./lookup.ts";
import type { CurvePiece } from "./types.ts";

/** The point halfway along pieces that lie end to end, by arc length; there is a piece or more. */
export function middleOfPieces(pieces: readonly CurvePiece[]): Vec2 {
  const curve = toCurve(pieces, false);
  return frameAtLength(curve, curve.lengthMm / 2).at;
}
