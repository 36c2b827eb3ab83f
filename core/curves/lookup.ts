import { at } from "../foundation/index.ts";
import { parameterAtLength, pieceLengthMm } from "./piece-length.ts";
import { frameOnPiece } from "./pieces.ts";
import type { Curve, CurveFrame, CurvePiece } from "./types.ts";

/** A place on a curve: the index of a piece and the parameter on it. */
export interface CurvePlace {
  readonly index: number;
  readonly t: number;
}

/** Pieces end to end as a curve, with the arc length at the start of each. */
export function toCurve(pieces: readonly CurvePiece[], closed: boolean): Curve {
  const startsMm: number[] = [];
  let lengthMm = 0;
  for (const piece of pieces) {
    startsMm.push(lengthMm);
    lengthMm += pieceLengthMm(piece);
  }
  return { closed, pieces, startsMm, lengthMm };
}

/**
 * The place at an arc length from the curve's start. Beyond the ends an open curve holds its ends and a closed
 * one goes round; where two pieces meet it is the start of the later one. The curve has a piece or more.
 */
export function locateLength(curve: Curve, sMm: number): CurvePlace {
  const along = curve.closed ? aroundLoop(sMm, curve.lengthMm) : sMm;
  let low = 0;
  let high = curve.startsMm.length - 1;
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if (at(curve.startsMm, middle) <= along) low = middle;
    else high = middle - 1;
  }
  return { index: low, t: parameterAtLength(at(curve.pieces, low), along - at(curve.startsMm, low)) };
}

/** Position, unit tangent and signed curvature at an arc length; see `locateLength`. */
export function frameAtLength(curve: Curve, sMm: number): CurveFrame {
  const { index, t } = locateLength(curve, sMm);
  return frameOnPiece(at(curve.pieces, index), t);
}

/**
 * Where a node lies: the start (t = 0) of the piece that leaves it, or the end (t = 1) of the last piece of an
 * open curve. A radiused node is the middle of its arc. Undefined if the curve has no such node.
 */
export function nodePlace(curve: Curve, nodeId: string): CurvePlace | undefined {
  const index = curve.pieces.findIndex((piece) => piece.startNodeId === nodeId);
  if (index >= 0) return { index, t: 0 };
  const ending = curve.pieces.findIndex((piece) => piece.endNodeId === nodeId);
  if (ending < 0) return undefined;
  const last = curve.pieces.length - 1;
  if (ending < last) return { index: ending + 1, t: 0 };
  return curve.closed ? { index: 0, t: 0 } : { index: last, t: 1 };
}

/**
 * The pieces from one node to another in the curve's own direction. On a closed curve it wraps, and the same
 * node twice is the whole loop from there. Undefined if a node is missing, or an open curve does not run that way.
 */
export function subCurve(curve: Curve, fromNodeId: string, toNodeId: string): CurvePiece[] | undefined {
  const from = nodePlace(curve, fromNodeId);
  const to = nodePlace(curve, toNodeId);
  if (!from || !to) return undefined;
  const first = from.index + from.t;
  const end = to.index + to.t;
  if (first < end) return curve.pieces.slice(first, end);
  return curve.closed ? [...curve.pieces.slice(first), ...curve.pieces.slice(0, end)] : undefined;
}

function aroundLoop(sMm: number, lengthMm: number): number {
  if (sMm >= 0 && sMm <= lengthMm) return sMm;
  const rest = sMm % lengthMm;
  return rest < 0 ? rest + lengthMm : rest;
}
