import type { FlatPoint, SpacePoint } from "../foundation/index.ts";

/** A smooth (C2) stretch of an edge in space over t in [0, 1]; mm. It may stand still at neither end. */
export interface SpacePiece {
  readonly pointAt: (t: number) => SpacePoint;
  readonly velocityAt: (t: number) => SpacePoint;
}

/**
 * A part of a piece on which the point is a polynomial of the length, to rounding: `coefficients` holds, for x, y and z
 * in turn, c0 … c8 of powers of w = 2 (length along the span) / lengthMm − 1.
 */
export interface EdgeSpan {
  readonly startMm: number;
  readonly lengthMm: number;
  readonly coefficients: readonly number[];
}

/** An edge by its length from its start. Made by `compileEdge`; never put together by hand. */
export interface SpaceEdge {
  readonly pieces: readonly SpacePiece[];
  readonly spans: readonly EdgeSpan[];
  readonly lengthMm: number;
  /** Where the tangent turns at once, by more than SMOOTH_FOLD_RAD; ends of the edge are not listed. */
  readonly cornersMm: readonly number[];
  /** Where the curvature jumps on a smooth edge (a line that runs into an arc): the pairing may turn there. */
  readonly jumpsMm: readonly number[];
  /** Every border between pieces: quadrature stops there. */
  readonly bordersMm: readonly number[];
  /** Where the edge starts; all of it where it has no length. */
  readonly start: SpacePoint;
}

/** An edge at one place: the point, the unit tangent (on one side of a corner) and its change by length, 1/mm. */
export interface EdgePlace {
  readonly point: SpacePoint;
  readonly tangent: SpacePoint;
  readonly curvature: SpacePoint;
}

export interface PairingSettings {
  readonly thicknessMm: number;
  /** The foam's limit: tighter bends are traded against twist. With 0 twist alone counts. */
  readonly leastRadiusMm: number;
  /**
   * Where the bend of a fan counts in the search: at the edge that it sweeps (the default), or one thickness in from its
   * apex, which makes fans dear.
   */
  readonly fanBend?: "swept edge" | "near apex";
  /**
   * What the rulings are chosen for: the least twist (the default), or the least strain of foam that is pressed onto the
   * sheet, twist and bend together.
   */
  readonly aim?: "twist" | "strain";
  /**
   * Which side the inward normal is on: where its mean has z > 0 (the default) or z < 0. A sheet whose mean normal is
   * level takes the one that a walker along the first edge, the second on the right, sees as up.
   */
  readonly side?: "up" | "down";
  /** Rulings that carry the pairing, about; more make it finer. 96 by default. */
  readonly nodes?: number;
}

/**
 * The edge whose end or corner the rulings of a stretch all start from, so that they sweep one tangent only and have no
 * twist; "none" elsewhere.
 */
export type FanApex = "none" | "first" | "second";

/**
 * A ruling that carries the pairing: s is half the length swept on both edges together, so that
 * sMm = (firstMm + secondMm) / 2. Between two of them firstMm(s) is the cubic with the slopes given here.
 */
export interface PairingNode {
  readonly sMm: number;
  readonly firstMm: number;
  readonly secondMm: number;
  readonly slopeBefore: number;
  readonly slopeAfter: number;
  /** What lies between this ruling and the next. */
  readonly fanAfter: FanApex;
}

/** A ruling along which the sheet does not go on smoothly: the angle between the tangent planes on its two sides. */
export interface Crease {
  readonly sMm: number;
  readonly firstMm: number;
  readonly secondMm: number;
  readonly angleRad: number;
}

/**
 * A part of the sheet between two stops (rulings of the pairing, borders of pieces), on which everything is smooth, swept
 * at STRETCH_POINTS: the numbers of `sweepRuling` from `offset` on, one ruling after the other.
 */
export interface SweptStretch {
  readonly fromMm: number;
  readonly toMm: number;
  /** Which two rulings of the pairing it lies between: this one and the next. */
  readonly interval: number;
  readonly sweeps: Float64Array;
  readonly offset: number;
}

/** Two edges and their pairing: all that follows is worked out from these. */
export interface PairedEdges {
  readonly first: SpaceEdge;
  readonly second: SpaceEdge;
  /** Whether the second edge had to be reversed to run with the first. */
  readonly isSecondReversed: boolean;
  readonly lengthSMm: number;
  readonly rulings: readonly PairingNode[];
  /** +1 where the inward normal is tangent × ruling (from first to second), else −1. */
  readonly side: 1 | -1;
}

/** The ruled sheet between two edges, which run the same way; plain data. */
export interface RuledSurface extends PairedEdges {
  readonly stretches: readonly SweptStretch[];
  /** Creases over 0.1°, in order of s. */
  readonly creases: readonly Crease[];
}

/** A place on a ruled sheet: s along the sweep (beyond the ends the sheet goes on flat), t from first to second edge. */
export interface RuledPlace {
  readonly sMm: number;
  readonly t: number;
}

/** One ruling of the drawn surface. */
export interface Ruling {
  readonly sMm: number;
  readonly firstMm: number;
  readonly secondMm: number;
  readonly fan: FanApex;
  readonly from: SpacePoint;
  readonly to: SpacePoint;
  /** Unit vector from first to second edge. */
  readonly direction: SpacePoint;
  readonly lengthMm: number;
  /** Unit inward normal: the middle of the normals at both ends. */
  readonly normal: SpacePoint;
  /** Turn of the tangent plane from first to second edge, right-handed about the direction. */
  readonly twistRad: number;
  /** Normal curvature square to the ruling at each end, 1/mm, positive where it bends toward the normal. */
  readonly firstCurvature: number;
  readonly secondCurvature: number;
}

/** The flat pattern of a ruled sheet at one depth, or of one strip of it, seen from the upper face. */
export interface Development {
  readonly depthMm: number;
  /** Flat place of any place of the sheet, also beyond its ends and edges. */
  readonly flatAt: (place: RuledPlace) => FlatPoint;
  /** Direction of the ruling in the flat, from first to second edge, rad from +u toward +v. */
  readonly rulingAngleAt: (sMm: number) => number;
}

export type TwistVerdict = "developable" | "press down" | "divide" | "not with this foam";

export interface TwistSettings {
  readonly thicknessMm: number;
  readonly leastRadiusMm: number;
  /** Largest strain of the foam's outer fibre in bending. */
  readonly strainLimit: number;
}

export interface TwistJudgement {
  readonly verdict: TwistVerdict;
  /** Strips to divide the sheet into, each as wide along every ruling as the others; 1 when whole. */
  readonly strips: number;
  readonly maxTwistRad: number;
  /** Where the twist is largest. */
  readonly atSMm: number;
  readonly leastRadiusMm: number;
  /** Largest over the rulings, for strips as divided. */
  readonly membraneStrain: number;
  readonly pressStrain: number;
  readonly largestCreaseRad: number;
}

/** Twist and bend at one ruling; κ is that of the tighter end, one thickness in from a fan's apex. */
export interface TwistStation {
  readonly sMm: number;
  readonly lengthMm: number;
  readonly twistRad: number;
  readonly curvature: number;
  readonly membraneStrain: number;
  readonly bendStrain: number;
}
