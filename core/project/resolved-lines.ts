import type { Curve, CurvePiece, SpaceCubic } from "../curves/index.ts";
import type { Problem } from "../foundation/index.ts";

/**
 * One edge of a transition: an edge of its own in space; a stretch of a section or plate, in plan, on the hand where
 * it lies (`hand` says whether that is the image); the free edge of a plate's wing; or the closing edge of another
 * transition. All run in the transition's own direction; `isReversed` says that this is against the wing's or the
 * other edge's.
 */
export type ResolvedEdge =
  | { readonly kind: "free"; readonly pieces: readonly SpaceCubic[] }
  | {
      readonly kind: "stretch";
      readonly itemId: string;
      readonly hand: "right" | "left";
      readonly edgeIds: readonly string[];
      readonly pieces: readonly CurvePiece[];
    }
  | {
      readonly kind: "wing";
      readonly itemId: string;
      readonly hand: "right" | "left";
      readonly wingId: string;
      readonly isReversed: boolean;
    }
  | {
      readonly kind: "closing";
      readonly itemId: string;
      readonly hand: "right" | "left";
      readonly end: "start" | "end";
      readonly isReversed: boolean;
    };

export interface TransitionEdges {
  readonly first: ResolvedEdge;
  readonly second: ResolvedEdge;
}

/**
 * Every drawn line of a project compiled to a curve, with followed stretches put in. A line that cannot be
 * compiled is absent and has a problem. Outlines run counter-clockwise seen from above (x rearward, y right, so
 * counter-clockwise turns from x toward y), whichever way they were drawn; edge and node ids are kept.
 * A piece with the id e that follows an edge is the edge e between the nodes e-start and e-end; the segment that
 * leaves its end is the edge e-next.
 */
export interface ResolvedLines {
  /** Outlines of sections, plates and transitions (closed) and lines of fences (open), by item id; plan (x, y). */
  readonly plan: Readonly<Record<string, Curve>>;
  /** Lines in plan that compile but cannot be used, by item id, in the direction they were drawn: for the screen. */
  readonly unfit?: Readonly<Record<string, Curve>>;
  /** Profiles by profile id; (x, z), x rising. */
  readonly profiles: Readonly<Record<string, Curve>>;
  /** Lower edges of fences given as heights, by item id; (x, z). */
  readonly lowerEdges: Readonly<Record<string, Curve>>;
  /** The two edges of each transition, by item id, both running the same way. */
  readonly transitions: Readonly<Record<string, TransitionEdges>>;
  /** Outlines of openings, by opening id, counter-clockwise. */
  readonly openings: Readonly<Record<string, Curve>>;
  /** For each edge that follows: who it follows. Key `itemId/edgeId`. */
  readonly follows: Readonly<
    Record<
      string,
      { readonly itemId: string; readonly edgeIds: readonly string[]; readonly hand: "right" | "left" }
    >
  >;
  readonly problems: readonly Problem[];
}
