import type { CurvePiece } from "../curves/index.ts";
import type { FlatPoint, PlanPoint, SpacePoint } from "../foundation/index.ts";
import type { FaceDepths, PanelMake } from "../laminate/index.ts";
import type { RuledPlace, RuledSurface, TwistJudgement } from "../rulings/index.ts";

/** Which image of the drawing: with mirroring off, or joined across the centre line, a sheet is whole. */
export type Hand = "right" | "left" | "whole";

/**
 * One smooth stretch of a profile (or of a fence's line) in a chart, in order of u. `tableUMm[i]` is the u gained
 * from t = 0 to t = i / (length of the table - 1), so that u at any t is one short quadrature away.
 */
export interface ChartPiece {
  readonly piece: CurvePiece;
  readonly startUMm: number;
  readonly lengthUMm: number;
  readonly tableUMm: readonly number[];
  /** Whether u grows evenly with t, so that no quadrature is needed. */
  readonly isEven: boolean;
}

/**
 * A general cylinder as a chart: u is the arc length of the right section of the *drawn* surface, from the
 * first ruling rearward; v runs along the rulings, to the right. The profile p(ξ) is compiled in (ξ, z);
 * a plan point has ξ = x − (y − y0) tan ψ and z = p(ξ) + (y − y0) tan τ. Beyond its ends the profile goes on
 * straight, so that an edge may be set back outward.
 */
export interface CylinderChart {
  readonly kind: "cylinder";
  readonly pieces: readonly ChartPiece[];
  readonly lengthUMm: number;
  readonly pivotYMm: number;
  readonly tanHeading: number;
  readonly tanTilt: number;
  /**
   * The frame of the right section: `ruling` along v to the right, `rearward` and `upward` square to it and to
   * each other; all unit vectors, rearward × ruling = upward.
   */
  readonly ruling: SpacePoint;
  readonly rearward: SpacePoint;
  readonly upward: SpacePoint;
}

/**
 * An upright sheet as a chart: u is the arc length of its mid-line in plan, v the height z above ground. Its
 * neutral fibre is the mid-line itself.
 */
export interface UprightChart {
  readonly kind: "upright";
  readonly pieces: readonly ChartPiece[];
  readonly lengthUMm: number;
}

/**
 * The ruled sheet between two edges as a chart: u is the sweep s of its pairing, mm; v the share t of the way from
 * the first edge to the second, 0 to 1.
 */
export interface RuledChart {
  readonly kind: "ruled";
  readonly surface: RuledSurface;
}

export type Chart = CylinderChart | UprightChart | RuledChart;

/** What happens at an edge: free, joined to another sheet, joined to its own image on the centre line, or a cut. */
export type EdgeRole = "free" | "joint" | "centre" | "seam";

/** A stretch of a plan curve by its parameter and, on a transition, the strip that it lies on. */
interface PlanStretch {
  readonly piece: CurvePiece;
  readonly from: number;
  readonly to: number;
  readonly strip?: number;
}

/**
 * What the points of a region edge lie on, from the first (share 0) to the last (share 1): a stretch of a plan
 * curve, by its parameter, under the drawn surface ("plan") or, where the edge is cut upright, under the face at any
 * depth ("plumb": the edge's own points are the feet of its neutral fibre); or a straight in the coordinates of a ruled chart, on one of the strips that it is
 * divided into.
 */
export type EdgeTrace =
  | (PlanStretch & { readonly kind: "plan" })
  | (PlanStretch & { readonly kind: "plumb" })
  | { readonly kind: "ruled"; readonly from: RuledPlace; readonly to: RuledPlace; readonly strip: number };

/**
 * One drawn edge of a sheet, in chart coordinates {u, v} of the drawn surface, dense enough that the chords
 * keep CHORD_ERROR_MM and OUTLINE_SHORTFALL in the flat pattern. `flat` holds the same points on the neutral fibre
 * laid flat, `shares` their places on the trace. An edge without a trace is straight in its chart.
 */
export interface RegionEdge {
  readonly edgeId: string;
  readonly name: string;
  readonly role: EdgeRole;
  readonly points: readonly FlatPoint[];
  readonly flat: readonly FlatPoint[];
  readonly shares: readonly number[];
  readonly trace?: EdgeTrace;
  /** The opening that it is an edge of. */
  readonly openingId?: string;
  /** Of an upright wall: its bevel off square at each point, rad; positive leaves the air face longer. */
  readonly bevelsRad?: readonly number[];
  /** A stretch where the drawn edge stands still, as the apex of a fan: it has a length behind the drawn surface only. */
  readonly isApex?: boolean;
}

/** A stretch of a region's border in plan, and how it is cut. */
export interface BorderPiece {
  readonly piece: CurvePiece;
  readonly wall: "square" | "upright";
}

/** Where a section with openings is, at any depth: by the foot for square edges, by the plan point for upright ones. */
export interface OpenedCover {
  /** The outline of the whole section and its square openings, even-odd. */
  readonly square: readonly (readonly PlanPoint[])[];
  /** Upright openings, one by one. */
  readonly upright: readonly (readonly PlanPoint[])[];
  /** Where openings divide the section into sheets: this one's outline, and those of the others beside it. */
  readonly own: readonly (readonly PlanPoint[])[];
  readonly others: readonly (readonly PlanPoint[])[];
}

/** Where a transition with openings is, at any depth, within its edges. */
export interface RuledCover {
  /** Square openings, judged by the foot on the drawn surface, and upright ones, judged by the plan point. */
  readonly square: readonly (readonly PlanPoint[])[];
  readonly upright: readonly (readonly PlanPoint[])[];
  /** Where openings divide the transition into sheets: this one's outline, and those of the others beside it. */
  readonly own: readonly (readonly PlanPoint[])[];
  readonly others: readonly (readonly PlanPoint[])[];
}

/** A closed loop of edges, end to end, counter-clockwise for an outline and clockwise for a hole, seen from above. */
export interface RegionLoop {
  readonly edges: readonly RegionEdge[];
}

export interface SheetCommon {
  /** `S2`, or `S2.1` where a profile corner divides the section. */
  readonly id: string;
  readonly itemId: string;
  readonly name: string;
  readonly foamId: string;
  readonly thicknessMm: number;
  readonly depths: FaceDepths;
  /** The images that are made of it: right and left, or one whole. The chart is that of the right or the whole. */
  readonly hands: readonly Hand[];
  readonly loops: readonly RegionLoop[];
}

/** A plane that ends a sheet at a joint: the sheet lies where (P − origin) · toward ≤ 0. */
export interface EndPlane {
  readonly origin: SpacePoint;
  readonly toward: SpacePoint;
}

export interface SectionSheet extends SheetCommon {
  readonly kind: "section";
  readonly chart: CylinderChart;
  /**
   * The outline of the whole section with its openings (where these divide it, of this sheet of it) as polygons in
   * plan (right or whole hand), even-odd.
   */
  readonly planLoops: readonly (readonly PlanPoint[])[];
  /** Its bounding box in plan: least and most corner. */
  readonly planBox: readonly [PlanPoint, PlanPoint];
  /** The curves of that outline, in no order. */
  readonly planPieces: readonly CurvePiece[];
  /** The same curves with how each is cut, as they meet at the neutral fibre; absent where no opening cuts the section. */
  readonly borders?: readonly BorderPiece[];
  /** Absent where no opening cuts the section: then `planLoops` says it. */
  readonly cover?: OpenedCover;
  /** The mitre planes at profile corners that bound this sheet of its section. */
  readonly ends: readonly EndPlane[];
}

/** A profile corner that divides a section: the fold between two of its sheets, along one ruling. */
export interface CornerFold {
  readonly nodeId: string;
  readonly itemId: string;
  readonly sheetIds: readonly [string, string];
  /** Edge id of the ruling in both sheets. */
  readonly edgeId: string;
  /** Turn toward the inward normal, rad: positive when the core lies inside the fold. */
  readonly foldRad: number;
  /** Ends of the ruling in space, and its length, one entry for each island. */
  readonly stretches: readonly {
    readonly from: SpacePoint;
    readonly to: SpacePoint;
    readonly lengthMm: number;
  }[];
}

/** The upper edge of a fence at one place along it: heights of the seat at both foam faces and the bevel between. */
export interface SeatStation {
  readonly alongMm: number;
  readonly at: PlanPoint;
  /** Height of the seat on the mid-plane, and at the foam faces left and right of the line's direction. */
  readonly midZMm: number;
  readonly leftZMm: number;
  readonly rightZMm: number;
  /** atan((left − right) / thickness). */
  readonly bevelRad: number;
  /** The sheet that stands above. */
  readonly sheetId: string;
}

export interface FenceSheet extends SheetCommon {
  readonly kind: "fence";
  readonly chart: UprightChart;
  readonly seat: readonly SeatStation[];
  readonly seatOn: "core" | "skin";
  readonly standsFirst: boolean;
  /** The panel that it is cut from; absent where it is skinned in place. Its thickness is then the sheet's. */
  readonly panel?: PanelMake;
}

/** A ruling as it is drawn: its ends on the drawn surface, and the turn of the tangent plane along it. */
export interface DrawnRuling {
  readonly sMm: number;
  readonly from: SpacePoint;
  readonly to: SpacePoint;
  readonly twistRad: number;
}

export interface TransitionSheet extends SheetCommon {
  readonly kind: "transition";
  readonly chart: RuledChart;
  readonly judgement: TwistJudgement;
  /** The shares t between which each strip lies, and where it is laid: one from 0 to 1 unless twist divides the sheet. */
  readonly strips: readonly { readonly shares: readonly [number, number]; readonly shift: FlatPoint }[];
  readonly rulings: readonly DrawnRuling[];
  /** Present where openings cut the transition. */
  readonly cover?: RuledCover;
  /**
   * The outline in plan (right or whole hand) with its openings as polygons, even-odd, and its box; empty where the
   * sheet stands upright.
   */
  readonly planLoops: readonly (readonly PlanPoint[])[];
  readonly planBox: readonly [PlanPoint, PlanPoint];
  readonly planPieces: readonly CurvePiece[];
}

/** A sheet that lies over the plan, and that ribs and fences may meet. */
export type LyingSheet = SectionSheet | TransitionSheet;

/** One drawn surface with its outline: what every later stage works on. */
export type Sheet = SectionSheet | FenceSheet | TransitionSheet;
