import { cross2, gaussShort } from "../foundation/index.ts";
import { derivativeOnPiece, pointOnPiece } from "./pieces.ts";
import type { CurvePiece } from "./types.ts";

/** A piece of a loop as it is walked: `reversed` walks its parameter from 1 to 0. */
export interface WalkedPiece {
  readonly piece: CurvePiece;
  readonly reversed: boolean;
}

/**
 * Signed area inside a closed loop, mm²: positive where it is walked counter-clockwise. Half the integral of P × dP,
 * in closed form for lines and arcs; that of a cubic is a polynomial of degree 5 and Gauss's rule is exact.
 */
export function enclosedAreaMm2(loop: readonly WalkedPiece[]): number {
  const first = loop[0];
  if (!first) return 0;
  const origin = pointOnPiece(first.piece, 0);
  return loop.reduce(
    (sum, { piece, reversed }) => sum + (reversed ? -1 : 1) * sweptMm2(piece, origin[0], origin[1]),
    0,
  );
}

/** The area swept by the straight from the origin to a point that runs along a piece. */
function sweptMm2(piece: CurvePiece, x0: number, y0: number): number {
  if (piece.kind === "arc") {
    const [start, end] = [pointOnPiece(piece, 0), pointOnPiece(piece, 1)];
    const [cx, cy] = [piece.centre[0] - x0, piece.centre[1] - y0];
    const chord = cx * (end[1] - start[1]) - cy * (end[0] - start[0]);
    return (chord + piece.radiusMm * piece.radiusMm * piece.sweepRad) / 2;
  }
  const moment = (t: number): number => {
    const [x, y] = pointOnPiece(piece, t);
    return cross2([x - x0, y - y0], derivativeOnPiece(piece, t)) / 2;
  };
  return piece.kind === "line" ? moment(0.5) : gaussShort(moment, 0, 1);
}
