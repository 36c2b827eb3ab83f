import { assertNever, length2, scale2, unit2, type Vec2 } from "../foundation/index.ts";
import type { CubicPiece, CurveFrame, CurvePiece } from "./types.ts";

/** The point of a piece at t, 0 at its start and 1 at its end; mm, in the frame of the piece. */
export function pointOnPiece(piece: CurvePiece, t: number): Vec2 {
  switch (piece.kind) {
    case "line":
      return t === 1
        ? piece.to
        : [
            piece.from[0] + (piece.to[0] - piece.from[0]) * t,
            piece.from[1] + (piece.to[1] - piece.from[1]) * t,
          ];
    case "arc": {
      const angleRad = piece.startRad + piece.sweepRad * t;
      return [
        piece.centre[0] + piece.radiusMm * Math.cos(angleRad),
        piece.centre[1] + piece.radiusMm * Math.sin(angleRad),
      ];
    }
    case "cubic":
      return [evaluate(piece.first, t), evaluate(piece.second, t)];
    default:
      return assertNever(piece);
  }
}

/** The first derivative by t, mm. */
export function derivativeOnPiece(piece: CurvePiece, t: number): Vec2 {
  switch (piece.kind) {
    case "line":
      return [piece.to[0] - piece.from[0], piece.to[1] - piece.from[1]];
    case "arc": {
      const angleRad = piece.startRad + piece.sweepRad * t;
      const speedMm = piece.radiusMm * piece.sweepRad;
      return [0 - speedMm * Math.sin(angleRad), speedMm * Math.cos(angleRad)];
    }
    case "cubic":
      return [slopeOf(piece.first, t), slopeOf(piece.second, t)];
    default:
      return assertNever(piece);
  }
}

/** The second derivative by t, mm. */
export function secondDerivativeOnPiece(piece: CurvePiece, t: number): Vec2 {
  switch (piece.kind) {
    case "line":
      return [0, 0];
    case "arc": {
      const angleRad = piece.startRad + piece.sweepRad * t;
      const sizeMm = piece.radiusMm * piece.sweepRad * piece.sweepRad;
      return [0 - sizeMm * Math.cos(angleRad), 0 - sizeMm * Math.sin(angleRad)];
    }
    case "cubic":
      return [bendOf(piece.first, t), bendOf(piece.second, t)];
    default:
      return assertNever(piece);
  }
}

export const startOfPiece = (piece: CurvePiece): Vec2 => pointOnPiece(piece, 0);
export const endOfPiece = (piece: CurvePiece): Vec2 => pointOnPiece(piece, 1);

/**
 * Position, unit tangent and signed curvature (positive turning left) at t. Where the piece stands still (a
 * cusp) the tangent is that of the nearer side and the curvature 0, so that no caller meets a NaN.
 */
export function frameOnPiece(piece: CurvePiece, t: number): CurveFrame {
  const at = pointOnPiece(piece, t);
  if (piece.kind === "arc") {
    const tangent = unit2(derivativeOnPiece(piece, t));
    return { at, tangent, curvaturePerMm: Math.sign(piece.sweepRad) / piece.radiusMm };
  }
  const first = derivativeOnPiece(piece, t);
  if (piece.kind === "line") return { at, tangent: unit2(first), curvaturePerMm: 0 };
  const second = secondDerivativeOnPiece(piece, t);
  const speedMm = length2(first);
  if (speedMm <= 1e-12 * sizeOf(piece)) {
    const tangent = unit2(scale2(second, t < 0.5 ? 1 : -1));
    return { at, tangent, curvaturePerMm: 0 };
  }
  const curvaturePerMm = (first[0] * second[1] - first[1] * second[0]) / (speedMm * speedMm * speedMm);
  return { at, tangent: [first[0] / speedMm, first[1] / speedMm], curvaturePerMm };
}

type Coefficients = CubicPiece["first"];

const evaluate = (c: Coefficients, t: number): number => c[0] + t * (c[1] + t * (c[2] + t * c[3]));
const slopeOf = (c: Coefficients, t: number): number => c[1] + t * (2 * c[2] + t * 3 * c[3]);
const bendOf = (c: Coefficients, t: number): number => 2 * c[2] + 6 * c[3] * t;

/** The largest derivative a cubic can have, roughly; 0 only for a single point. */
function sizeOf(piece: CubicPiece): number {
  const [, a1, a2, a3] = piece.first;
  const [, b1, b2, b3] = piece.second;
  return Math.abs(a1) + Math.abs(a2) + Math.abs(a3) + Math.abs(b1) + Math.abs(b2) + Math.abs(b3);
}
