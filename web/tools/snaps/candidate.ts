import type { Vec2 } from "../../../core/foundation/index.ts";
import { awayPx } from "../nearest.ts";
import type { Place, Snap } from "../types.ts";

/** A point that a place may snap to. What counts less must lie nearer by `handicapPx` to be taken. */
export interface Candidate extends Snap {
  readonly handicapPx: number;
}

/** The candidate that lies nearest within reach, its handicap counted in. */
export function bestOf(candidates: readonly Candidate[], place: Place, reachPx: number): Snap | undefined {
  let best: Candidate | undefined;
  let bestPx = Number.POSITIVE_INFINITY;
  for (const candidate of candidates) {
    const away = awayPx(candidate.at, place.at, place.mmPerPx);
    const counted = away + candidate.handicapPx;
    if (away > reachPx || counted >= bestPx) continue;
    bestPx = counted;
    best = candidate;
  }
  if (!best) return undefined;
  const { handicapPx: _, ...snap } = best;
  return snap;
}

/** The unit direction from one point to another; [0, 0] where they are one. */
export function toward(from: Vec2, to: Vec2): Vec2 {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  return length === 0 ? [0, 0] : [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
}
