import {
  type CurvePiece,
  frameOnPiece,
  nearestOnPiece,
  wherePiecesMeet,
} from "../../../core/curves/index.ts";
import type { Vec2 } from "../../../core/foundation/index.ts";
import type { Candidate } from "./candidate.ts";
import type { NearEdge } from "./near-edges.ts";
import { wordOfCrossing } from "./snap-words.ts";

/** Where two of the edges that lie near cross, or one ends on the other. */
export const crossingCandidates = (near: readonly NearEdge[]): readonly Candidate[] =>
  near.flatMap((one, index) =>
    near.slice(index + 1).flatMap((other) =>
      one.edge === other.edge
        ? []
        : meetingsOf(one.piece, other.piece).map(
            (at): Candidate => ({
              at,
              reasons: [wordOfCrossing(one, other)],
              signs: [{ kind: "crossings", at, along: [directionAt(one, at), directionAt(other, at)] }],
              edge: { line: one.line.line, edgeId: one.edge.edgeId },
              handicapPx: 1,
            }),
          ),
    ),
  );

const directionAt = ({ piece }: NearEdge, at: Vec2): Vec2 =>
  frameOnPiece(piece, nearestOnPiece(piece, at).t).tangent;

const known = new WeakMap<CurvePiece, WeakMap<CurvePiece, readonly Vec2[]>>();

/** Pieces stay while they are looked at: each pair is met once. */
function meetingsOf(one: CurvePiece, other: CurvePiece): readonly Vec2[] {
  const ofOne = known.get(one) ?? new WeakMap<CurvePiece, readonly Vec2[]>();
  known.set(one, ofOne);
  const before = ofOne.get(other);
  if (before) return before;
  const meetings = wherePiecesMeet(one, other);
  ofOne.set(other, meetings);
  return meetings;
}
