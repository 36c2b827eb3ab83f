import { type CurvePiece, flattenPiece, pointOnPiece } from "../../core/curves/index.ts";
import type { Vec2 } from "../../core/foundation/index.ts";

/** Closer than a pen line at any scale that the board shows. */
const SCREEN_LIMITS = { chordErrorMm: 0.1, turnRad: 0.15 };

/** The points of a piece as the screen draws it, with the curve parameter at each. */
export function flattenForScreen(piece: CurvePiece): {
  readonly points: readonly Vec2[];
  readonly parameters: readonly number[];
} {
  const parameters = flattenPiece(piece, SCREEN_LIMITS);
  return { points: parameters.map((t) => pointOnPiece(piece, t)), parameters };
}
