import type { BendVerdict, BendZone } from "../bending/index.ts";
import type { FlatPoint, SpacePoint } from "../foundation/index.ts";
import type { PanelMake } from "../laminate/index.ts";
import type { LetIn } from "../project/index.ts";
import type { TwistJudgement } from "../rulings/index.ts";
import type { EdgeRole, FibreStretch, Hand, SeatStation } from "../surfaces/index.ts";

/** One edge of a flat loop, first to last point, both ends included; seen from the face that the part names. */
export interface FlatEdge {
  readonly edgeId: string;
  readonly name: string;
  readonly role: EdgeRole | "seam";
  readonly points: readonly FlatPoint[];
  /** Of a piece that is skinned before it is cut: no trim is left on it. */
  readonly trim?: "none";
  /** What stands along it in place of foam, out to the drawn edge. */
  readonly letIn?: LetIn;
  /** Left standing outside it beside kerf and trim. */
  readonly spare?: EdgeSpare;
}

/**
 * What is left standing outside an edge, mm: half a scarf, to be tapered; spare, to be fitted to a measured gap; or foam to
 * hold a bend by, over a rib past the edge, to be trimmed off.
 */
export interface EdgeSpare {
  readonly lengthMm: number;
  readonly for: "scarf" | "gap" | "hold";
}

/** A closed flat loop: each edge starts where the one before ends. Outlines counter-clockwise, holes clockwise. */
export interface FlatLoop {
  readonly edges: readonly FlatEdge[];
}

/** The three separate computations of an edge's length, and how it is cut. */
export interface PartEdge {
  readonly edgeId: string;
  readonly name: string;
  readonly role: EdgeRole | "seam";
  /** In space, on the drawn surface, along the curve as drawn. */
  readonly drawnLengthMm: number;
  /** In space, on the neutral fibre, by quadrature. */
  readonly spaceLengthMm: number;
  /** On the flat outline as it is written to the template. */
  readonly flatLengthMm: number;
  /**
   * Bevel of the foam edge off square at its start and end, rad; 0 where it is cut square. Positive leaves the air
   * face longer, on a fence the outboard face.
   */
  readonly bevelRad: readonly [number, number];
  /** The bevel along the edge by flat length from its start, start and end included; empty where it is square all along. */
  readonly bevels: readonly BevelStation[];
  /** What stands along it in place of foam; absent where foam runs to the drawn edge. */
  readonly letIn?: LetIn;
  /** The opening that it is an edge of, and how that is cut; absent for other edges. */
  readonly opening?: { readonly id: string; readonly cut: "square" | "upright" };
}

export interface BevelStation {
  readonly alongMm: number;
  readonly bevelRad: number;
}

/**
 * A ruling that carries a transition's pairing: on the flat pattern, in space on the drawn surface, where it starts and
 * ends along the first and second edge, and the turn of the sheet's plane along it.
 */
export interface FlatRuling {
  readonly from: FlatPoint;
  readonly to: FlatPoint;
  readonly firstMm: number;
  readonly secondMm: number;
  readonly fromSpace: SpacePoint;
  readonly toSpace: SpacePoint;
  readonly twistRad: number;
}

/** The narrowest foam left between an opening and something else of its part. */
export interface OpeningWeb {
  readonly openingId: string;
  /** The name of the opening's edge there, and of the edge, joint or opening on the other side. */
  readonly name: string;
  readonly otherName: string;
  readonly otherEdgeId: string;
  readonly webMm: number;
  /** Its ends on the flat pattern: on the opening, and on the other edge. */
  readonly from: FlatPoint;
  readonly to: FlatPoint;
}

/** A sheet on one hand, laid flat at its neutral fibre. */
export interface Part {
  /** `S2R`, `S2.1L`, `S1` when whole. */
  readonly id: string;
  readonly sheetId: string;
  readonly itemId: string;
  readonly name: string;
  readonly kind: "section" | "fence" | "transition";
  readonly hand: Hand;
  /** The face that looks at the reader of the pattern. */
  readonly faceShown: "upper face" | "inboard face";
  readonly foamId: string;
  readonly thicknessMm: number;
  /** The panel that it is cut from, skinned before; absent where it is cut from bare foam. */
  readonly panel?: PanelMake;
  /** First loop: the outline of the largest island; then further outlines and holes. */
  readonly loops: readonly FlatLoop[];
  /** The same with what is let in along its edges in place of foam; absent where nothing is. */
  readonly finished?: readonly FlatLoop[];
  readonly edges: readonly PartEdge[];
  readonly spaceAreaMm2: number;
  readonly flatAreaMm2: number;
  /** In flat u of the part (from the first ruling of its sheet, as the outline's u is). */
  readonly zones: readonly BendZone[];
  readonly minRadiusMm?: number;
  readonly maxStrain: number;
  /** Where the fibre that keeps its length is not the middle of the foam; absent where all is bent whole. */
  readonly stretches?: readonly FibreStretch[];
  readonly verdict: BendVerdict;
  /** A fence's upper edge: heights and bevels along it; empty for other parts. */
  readonly seat: readonly SeatStation[];
  /** Of a transition: how it twists, and its rulings; absent for other parts. */
  readonly twist?: TwistJudgement;
  readonly rulings: readonly FlatRuling[];
  /** One for each opening in it; absent where it has none. */
  readonly webs?: readonly OpeningWeb[];
}
