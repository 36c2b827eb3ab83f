import { leftOf2, type Vec2 } from "../foundation/index.ts";
import { parameterAtLength, pieceLengthMm } from "./piece-length.ts";
import { frameOnPiece } from "./pieces.ts";
import type { CurvePiece } from "./types.ts";

/** A tooth of a curvature comb: where it stands, the unit normal to the left of the curve, and how the curve bends. */
export interface CombTooth {
  readonly at: Vec2;
  readonly left: Vec2;
  /** Positive turning left. */
  readonly curvaturePerMm: number;
}

/** The tightest place of a curve. */
export interface TightestPlace {
  readonly at: Vec2;
  readonly radiusMm: number;
}

/** Teeth at even arc lengths along each piece, both its ends included: where pieces join with a jump of curvature two differ. */
export function curvatureComb(pieces: readonly CurvePiece[], spacingMm: number): readonly CombTooth[] {
  return pieces.flatMap((piece) => {
    const lengthMm = pieceLengthMm(piece);
    const count = Math.min(MOST_TEETH, Math.max(1, Math.ceil(lengthMm / spacingMm)));
    return Array.from({ length: count + 1 }, (_, index) =>
      toothAt(piece, parameterAtLength(piece, (lengthMm * index) / count)),
    );
  });
}

/** The place of least radius on pieces, refined between samples; undefined where everything is straight. */
export function tightestPlace(pieces: readonly CurvePiece[]): TightestPlace | undefined {
  let best: TightestPlace | undefined;
  for (const piece of pieces) {
    const { at, curvaturePerMm } = frameOnPiece(piece, tightestParameter(piece));
    const radiusMm = 1 / Math.abs(curvaturePerMm);
    if (Number.isFinite(radiusMm) && (best === undefined || radiusMm < best.radiusMm))
      best = { at, radiusMm };
  }
  return best;
}

const MOST_TEETH = 400;
const SAMPLES = 32;

function toothAt(piece: CurvePiece, t: number): CombTooth {
  const { at, tangent, curvaturePerMm } = frameOnPiece(piece, t);
  return { at, left: leftOf2(tangent), curvaturePerMm };
}

function tightestParameter(piece: CurvePiece): number {
  if (piece.kind !== "cubic") return 0;
  const bend = (t: number) => Math.abs(frameOnPiece(piece, t).curvaturePerMm);
  let best = 0;
  for (let index = 1; index <= SAMPLES; index += 1)
    if (bend(index / SAMPLES) > bend(best)) best = index / SAMPLES;
  return highestBetween(bend, Math.max(0, best - 1 / SAMPLES), Math.min(1, best + 1 / SAMPLES));
}

const GOLDEN = (Math.sqrt(5) - 1) / 2;

/** Golden-section search for the top of f between a and b (Kiefer 1953; from memory); an end where the top is there. */
function highestBetween(f: (t: number) => number, a: number, b: number): number {
  let [low, high] = [a, b];
  for (let step = 0; step < 60; step += 1) {
    const inner = (high - low) * GOLDEN;
    if (f(high - inner) > f(low + inner)) high = low + inner;
    else low = high - inner;
  }
  const top = (low + high) / 2;
  return [a, b].reduce((best, end) => (f(end) > f(best) ? end : best), top);
}
