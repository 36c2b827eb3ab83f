import { at, cross2, dot2, quadraticRoots } from "../foundation/index.ts";
import { extremeParameters } from "./crossings.ts";
import { derivativeOnPiece, secondDerivativeOnPiece } from "./pieces.ts";
import type { ArcPiece, CubicPiece, CurvePiece } from "./types.ts";

/** How far a chord may lie from its curve, and how much the curve may turn over one chord. */
export interface FlattenLimits {
  readonly chordErrorMm: number;
  readonly turnRad: number;
}

/**
 * Parameters from 0 to 1, ascending and both ends included, whose chords keep both limits: the chord error as an
 * upper bound (|P″| Δt² / 8), the turn exactly. A line is one chord; an arc is cut evenly; a cubic is cut at its
 * inflections and extremes, then halved.
 */
export function flattenPiece(piece: CurvePiece, limits: FlattenLimits): number[] {
  switch (piece.kind) {
    case "line":
      return [0, 1];
    case "arc":
      return flattenArc(piece, limits);
    case "cubic":
      return flattenCubic(piece, limits);
  }
}

function flattenArc(piece: ArcPiece, limits: FlattenLimits): number[] {
  const sagittaRatio = Math.min(1, limits.chordErrorMm / piece.radiusMm);
  const stepRad = Math.min(limits.turnRad, 2 * Math.acos(1 - sagittaRatio));
  const count = Math.max(1, Math.ceil(Math.abs(piece.sweepRad) / stepRad - 1e-9));
  return Array.from({ length: count + 1 }, (_, i) => i / count);
}

/** Halving stops here: one part in four million of a piece between two of its stops. */
const MOST_HALVINGS = 22;

function flattenCubic(piece: CubicPiece, limits: FlattenLimits): number[] {
  const stops = quarterTurnStops(piece);
  const parameters = [0];
  for (let i = 0; i + 1 < stops.length; i++) {
    halve(piece, limits, [at(stops, i), at(stops, i + 1)], MOST_HALVINGS, parameters);
  }
  return parameters;
}

/** Between two of these a cubic turns one way, and by a quarter turn at most. */
function quarterTurnStops(piece: CubicPiece): number[] {
  const inner = [
    ...inflectionParameters(piece),
    ...extremeParameters(piece, [1, 0]),
    ...extremeParameters(piece, [0, 1]),
  ].sort((a, b) => a - b);
  const apart = inner.filter((t, i) => t > 1e-12 && t < 1 - 1e-12 && t - (inner[i - 1] ?? 0) > 1e-12);
  return [0, ...apart, 1];
}

/** P′ × P″ = 2 b×c + 6 b×d t + 6 c×d t² for P = a + b t + c t² + d t³. */
function inflectionParameters(piece: CubicPiece): number[] {
  const [, b0, c0, d0] = piece.first;
  const [, b1, c1, d1] = piece.second;
  const roots = quadraticRoots(b0 * c1 - b1 * c0, 3 * (b0 * d1 - b1 * d0), 3 * (c0 * d1 - c1 * d0));
  return roots.filter((t) => t > 0 && t < 1);
}

function halve(
  piece: CubicPiece,
  limits: FlattenLimits,
  [from, to]: readonly [number, number],
  halvings: number,
  parameters: number[],
): void {
  if (halvings === 0 || keepsLimits(piece, limits, from, to)) {
    parameters.push(to);
    return;
  }
  const middle = (from + to) / 2;
  halve(piece, limits, [from, middle], halvings - 1, parameters);
  halve(piece, limits, [middle, to], halvings - 1, parameters);
}

function keepsLimits(piece: CubicPiece, limits: FlattenLimits, from: number, to: number): boolean {
  const bendFrom = secondDerivativeOnPiece(piece, from);
  const bendTo = secondDerivativeOnPiece(piece, to);
  const bendMm = Math.max(Math.hypot(bendFrom[0], bendFrom[1]), Math.hypot(bendTo[0], bendTo[1]));
  if ((bendMm * (to - from) ** 2) / 8 > limits.chordErrorMm) return false;
  const tangentFrom = derivativeOnPiece(piece, from);
  const tangentTo = derivativeOnPiece(piece, to);
  const turnRad = Math.abs(Math.atan2(cross2(tangentFrom, tangentTo), dot2(tangentFrom, tangentTo)));
  return turnRad <= limits.turnRad;
}
