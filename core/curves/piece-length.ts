import { cubicRootsWithin, integrate, QUADRATURE_RELATIVE } from "../foundation/index.ts";
import type { CubicPiece, CurvePiece } from "./types.ts";

/**
 * Arc length of a piece from t0 to t1 in mm (negative when t1 is before t0). Lines and arcs in closed form;
 * cubics by adaptive Gauss quadrature of the speed, relative 1e-11, cut where the speed is least so that a
 * cusp lies at an end of a panel.
 */
export function pieceLengthMm(piece: CurvePiece, t0 = 0, t1 = 1): number {
  switch (piece.kind) {
    case "line":
      return Math.hypot(piece.to[0] - piece.from[0], piece.to[1] - piece.from[1]) * (t1 - t0);
    case "arc":
      return piece.radiusMm * Math.abs(piece.sweepRad) * (t1 - t0);
    case "cubic":
      return t1 < t0 ? -cubicLengthMm(piece, t1, t0) : cubicLengthMm(piece, t0, t1);
  }
}

/**
 * The parameter t of a piece at the arc length from its start; below 0 and beyond its length it is held at
 * the ends. Cubics by Newton's rule on the length, guarded by bisection; to rounding of the length.
 */
export function parameterAtLength(piece: CurvePiece, lengthMm: number): number {
  const wholeMm = pieceLengthMm(piece);
  if (lengthMm <= 0 || wholeMm === 0) return 0;
  if (lengthMm >= wholeMm) return 1;
  return piece.kind === "cubic" ? cubicParameterAtLength(piece, lengthMm, wholeMm) : lengthMm / wholeMm;
}

function cubicLengthMm(piece: CubicPiece, t0: number, t1: number): number {
  const speed = speedOf(piece);
  const stops = [t0, ...slowestParameters(piece, t0, t1), t1];
  let sumMm = 0;
  for (let i = 0; i + 1 < stops.length; i++) sumMm += integrate(speed, stops[i] ?? t0, stops[i + 1] ?? t1);
  return sumMm;
}

function cubicParameterAtLength(piece: CubicPiece, lengthMm: number, wholeMm: number): number {
  const speed = speedOf(piece);
  let low = 0;
  let high = 1;
  let t = lengthMm / wholeMm;
  let reachedMm = cubicLengthMm(piece, 0, t);
  for (let i = 0; i < 60; i++) {
    const missingMm = lengthMm - reachedMm;
    if (Math.abs(missingMm) <= QUADRATURE_RELATIVE * wholeMm) break;
    if (missingMm > 0) low = t;
    else high = t;
    const newton = t + missingMm / speed(t);
    const next = newton > low && newton < high ? newton : (low + high) / 2;
    if (next === t) break;
    reachedMm += pieceLengthMm(piece, t, next);
    t = next;
  }
  return t;
}

function speedOf(piece: CubicPiece): (t: number) => number {
  const [, a1, a2, a3] = piece.first;
  const [, b1, b2, b3] = piece.second;
  return (t) => {
    const x = a1 + t * (2 * a2 + t * 3 * a3);
    const y = b1 + t * (2 * b2 + t * 3 * b3);
    return Math.sqrt(x * x + y * y);
  };
}

/** Where P′·P″ = 0 strictly between t0 and t1: the speed is least (or most) there. */
function slowestParameters(piece: CubicPiece, t0: number, t1: number): number[] {
  const [, a1, a2, a3] = piece.first;
  const [, b1, b2, b3] = piece.second;
  const along = [
    2 * (a1 * a2 + b1 * b2),
    4 * (a2 * a2 + b2 * b2) + 6 * (a1 * a3 + b1 * b3),
    18 * (a2 * a3 + b2 * b3),
    18 * (a3 * a3 + b3 * b3),
  ] as const;
  return cubicRootsWithin(along, t0, t1).filter((t) => t > t0 && t < t1);
}
