import { footParameters, frameOnPiece, tangentParameters } from "../../../core/curves/index.ts";
import { COINCIDENT_POINTS_MM, distance2, type Vec2 } from "../../../core/foundation/index.ts";
import { type Candidate, toward } from "./candidate.ts";
import type { NearEdge } from "./near-edges.ts";
import { wordOfEdge } from "./snap-words.ts";

/** Where a segment from one of these points just touches an edge that lies near. */
export const tangentCandidates = (near: readonly NearEdge[], starts: readonly Vec2[]): readonly Candidate[] =>
  touching(near, starts, {
    kind: "tangents",
    word: "tangent to",
    find: (one, from) => tangentParameters(one.piece, from),
  });

/** Where a segment from one of these points meets an edge that lies near at a right angle. */
export const squareCandidates = (near: readonly NearEdge[], starts: readonly Vec2[]): readonly Candidate[] =>
  touching(near, starts, {
    kind: "squares",
    word: "square to",
    find: (one, from) => footParameters(one.piece, from),
  });

interface Touch {
  readonly kind: "tangents" | "squares";
  readonly word: string;
  readonly find: (one: NearEdge, from: Vec2) => readonly number[];
}

function touching(near: readonly NearEdge[], starts: readonly Vec2[], touch: Touch): readonly Candidate[] {
  return near.flatMap((one) =>
    starts.flatMap((from) =>
      touch.find(one, from).flatMap((t): readonly Candidate[] => {
        const { at, tangent } = frameOnPiece(one.piece, t);
        // From a point of the edge itself nothing touches it.
        if (distance2(at, from) <= COINCIDENT_POINTS_MM) return [];
        const sign = { kind: touch.kind, at, along: [tangent, toward(at, from)], guide: [from, at] } as const;
        return [
          {
            at,
            reasons: [`${touch.word} ${wordOfEdge(one)}`],
            signs: [sign],
            edge: { line: one.line.line, edgeId: one.edge.edgeId },
            handicapPx: 2,
          },
        ];
      }),
    ),
  );
}
