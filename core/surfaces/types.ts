import type { CurvePiece } from "../curves/index.ts";
import type { FlatPoint, PlanPoint } from "../foundation/index.ts";

/** Which image of the drawing: with mirroring off, or joined across the centre line, a sheet is whole. */
export type Hand = "right" | "left" | "whole";

/**
 * Offsets of every face from the drawn surface, along the inward normal (from the air into the tray), mm.
 * With the air side drawn, `airMm` is 0; with the neutral fibre drawn, `neutralMm` is 0.
 */
export interface FaceDepths {
  readonly airMm: number;
  readonly coreLowerMm: number;
  readonly neutralMm: number;
  readonly coreUpperMm: number;
  readonly upperMm: number;
}

/** One smooth stretch of a profile in a chart, in order of u. `t0`, `t1`: the part of the piece that is used. */
export interface ChartPiece {
  readonly piece: CurvePiece;
  readonly startUMm: number;
  readonly lengthUMm: number;
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

export type Chart = CylinderChart | UprightChart;

/** What happens at an edge: free, joined to another sheet, or joined to its own image on the centre line. */
export type EdgeRole = "free" | "joint" | "centre";

/**
 * One drawn edge of a sheet, in chart coordinates {u, v} of the drawn surface, dense enough that the chords
 * keep CHORD_ERROR_MM and CHORD_TURN_RAD in the flat pattern. `trace`, where present, is the plan curve that the
 * points lie on, with the curve parameter at each point.
 */
export interface RegionEdge {
  readonly edgeId: string;
  readonly name: string;
  readonly role: EdgeRole;
  readonly points: readonly FlatPoint[];
  readonly trace?: { readonly piece: CurvePiece; readonly parameters: readonly number[] };
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

export interface SectionSheet extends SheetCommon {
  readonly kind: "section";
  readonly chart: CylinderChart;
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
}

/** One drawn surface with its outline: what every later stage works on. */
export type Sheet = SectionSheet | FenceSheet;
