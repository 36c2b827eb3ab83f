import { frameOnPiece, middleOfPieces, nearestOnPiece } from "../../../core/curves/index.ts";
import type { Vec2 } from "../../../core/foundation/index.ts";
import type { SceneEdge } from "../scene.ts";
import type { Candidate } from "./candidate.ts";
import type { NearEdge } from "./near-edges.ts";
import { wordOfEdge } from "./snap-words.ts";

/** The middles of the edges that lie near, halfway by their length. */
export const middleCandidates = (near: readonly NearEdge[]): readonly Candidate[] =>
  near.map((one): Candidate => {
    const at = middleOf(one.edge);
    const { t } = nearestOnPiece(one.piece, at);
    const along = frameOnPiece(one.piece, t).tangent;
    return {
      at,
      reasons: [`middle of ${wordOfEdge(one)}`],
      signs: [{ kind: "middles", at, along: [along] }],
      edge: { line: one.line.line, edgeId: one.edge.edgeId },
      handicapPx: 2,
    };
  });

const middles = new WeakMap<SceneEdge, Vec2>();

function middleOf(edge: SceneEdge): Vec2 {
  const known = middles.get(edge);
  if (known) return known;
  const middle = middleOfPieces(edge.stretches.map(({ piece }) => piece));
  middles.set(edge, middle);
  return middle;
}
