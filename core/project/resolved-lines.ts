import type { Curve } from "../curves/index.ts";
import type { Problem } from "../foundation/index.ts";

/**
 * Every drawn line of a project compiled to a curve, with followed stretches put in. A line that cannot be
 * compiled is absent and has a problem. Outlines run counter-clockwise seen from above (x rearward, y right, so
 * counter-clockwise turns from x toward y), whichever way they were drawn; edge and node ids are kept.
 * A piece with the id e that follows an edge is the edge e between the nodes e-start and e-end; the segment that
 * leaves its end is the edge e-next.
 */
export interface ResolvedLines {
  /** Outlines of sections (closed) and lines of fences (open), by item id; plan (x, y). */
  readonly plan: Readonly<Record<string, Curve>>;
  /** Lines in plan that compile but cannot be used, by item id, in the direction they were drawn: for the screen. */
  readonly unfit?: Readonly<Record<string, Curve>>;
  /** Profiles by profile id; (x, z), x rising. */
  readonly profiles: Readonly<Record<string, Curve>>;
  /** Lower edges of fences given as heights, by item id; (x, z). */
  readonly lowerEdges: Readonly<Record<string, Curve>>;
  /** For each edge that follows: who it follows. Key `itemId/edgeId`. */
  readonly follows: Readonly<
    Record<
      string,
      { readonly itemId: string; readonly edgeIds: readonly string[]; readonly hand: "right" | "left" }
    >
  >;
  readonly problems: readonly Problem[];
}
