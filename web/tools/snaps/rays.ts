import { frameOnPiece, nearestOnPiece } from "../../../core/curves/index.ts";
import {
  COINCIDENT_POINTS_MM,
  distance2,
  leftOf2,
  scale2,
  type Vec2,
} from "../../../core/foundation/index.ts";
import { toward } from "./candidate.ts";
import { nearEdges } from "./near-edges.ts";
import { otherLines, type SnapRequest } from "./snap-request.ts";
import { wordOfEdge } from "./snap-words.ts";

/** A straight line on which the next node may lie: from the last node, one way. */
export interface Ray {
  readonly kind: "tangents" | "squares";
  readonly from: Vec2;
  /** Unit. */
  readonly direction: Vec2;
  readonly reason: string;
}

/** One micrometre of paper: the last node lies on an edge or it does not. */
const ON_EDGE_PX = 0.01;

/**
 * The lines along which a drawing goes on well: straight on from its last segment or along the edge that it began on,
 * and square to these.
 */
export function raysOf(request: SnapRequest): readonly Ray[] {
  const { draft, context } = request;
  const last = draft?.at(-1);
  if (!draft || !last) return [];
  const before = draft.at(-2);
  const onward = before?.next === "line" ? toward(before.at, last.at) : undefined;
  const own: readonly Ray[] = onward
    ? raysAlong(last.at, onward, {
        straight: `straight on from node ${draft.length}`,
        square: "the last segment",
      })
    : [];
  const rays = draft.length > 1 ? own : [...own, ...raysOfEdges(request, last.at)];
  return rays.filter(({ kind }) => context.snaps[kind]);
}

function raysOfEdges(request: SnapRequest, at: Vec2): readonly Ray[] {
  const mm = COINCIDENT_POINTS_MM / ON_EDGE_PX;
  const place = { at, mmPerPx: [mm, mm] as const };
  return nearEdges(otherLines(request), place, ON_EDGE_PX * 10).flatMap((one) => {
    const { t, distanceMm } = nearestOnPiece(one.piece, at);
    if (distanceMm > COINCIDENT_POINTS_MM) return [];
    const word = wordOfEdge(one);
    const { tangent } = frameOnPiece(one.piece, t);
    const words = { straight: `tangent to ${word}`, square: word };
    return [...raysAlong(at, tangent, words), ...raysAlong(at, scale2(tangent, -1), words).slice(0, 1)];
  });
}

function raysAlong(
  from: Vec2,
  direction: Vec2,
  words: { readonly straight: string; readonly square: string },
): readonly Ray[] {
  const left = leftOf2(direction);
  const square = { kind: "squares", from, reason: `square to ${words.square}` } as const;
  return [
    { kind: "tangents", from, direction, reason: words.straight },
    { ...square, direction: left },
    { ...square, direction: scale2(left, -1) },
  ];
}

/** Whether a place lies ahead on a ray, and not on its very start. */
export const isAhead = ({ from, direction }: Ray, at: Vec2): boolean =>
  (at[0] - from[0]) * direction[0] + (at[1] - from[1]) * direction[1] > 0 &&
  distance2(from, at) > COINCIDENT_POINTS_MM;
