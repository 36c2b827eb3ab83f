import { frameOnPiece, nearestOnPiece } from "../../../core/curves/index.ts";
import type { Snap } from "../types.ts";
import type { NearEdge } from "./near-edges.ts";
import { wordOfEdge } from "./snap-words.ts";

/** Onto the very curve of the nearest edge. */
export function onLineSnap(near: readonly NearEdge[]): Snap | undefined {
  const one = near[0];
  if (!one) return undefined;
  const { at, tangent } = frameOnPiece(one.piece, nearestOnPiece(one.piece, one.at).t);
  return {
    at,
    reasons: [`on ${wordOfEdge(one)}`],
    signs: [{ kind: "lines", at, along: [tangent] }],
    edge: { line: one.line.line, edgeId: one.edge.edgeId },
  };
}
