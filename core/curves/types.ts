import type { Vec2 } from "../foundation/index.ts";

/** A node of a path before it is compiled; `at` is (x, y) in plan and (x, z) in the side view, mm. */
export interface PathNode {
  readonly kind: "node";
  readonly id: string;
  readonly at: Vec2;
  /** A tangent arc here, between two lines only. */
  readonly radiusMm?: number;
  /** Default: smooth between two curves, corner beside a line. */
  readonly meets?: "smooth" | "corner";
  /**
   * Direction of travel at the end of the curve that arrives, rad from axis 0 toward axis 1. Counts where a run of
   * curves ends and no smooth line gives its own.
   */
  readonly tangentInRad?: number;
  /** Direction of travel at the start of the curve that leaves. */
  readonly tangentOutRad?: number;
  readonly next: "line" | "curve";
  /** Knot spacing of the curve that leaves; its chord if absent. */
  readonly knotSpacingMm?: number;
}

/**
 * A stretch that is already compiled (it follows an edge of another item), in this path's direction. A curve beside
 * it takes up its end tangent; two stretches that meet need no segment between them.
 */
export interface PathStretch {
  readonly kind: "stretch";
  readonly id: string;
  readonly pieces: readonly CurvePiece[];
  /** The segment that leaves its end. */
  readonly next: "line" | "curve";
}

export type PathElement = PathNode | PathStretch;

/** What is drawn: nodes joined by lines and curves. A closed path runs from its last element back to its first. */
export interface Path {
  readonly closed: boolean;
  readonly elements: readonly PathElement[];
}

interface PieceCommon {
  /** The drawn edge: the id of the element that its segment leaves. */
  readonly edgeId: string;
  /** Node at the start and at the end of the piece, where a node lies there. */
  readonly startNodeId?: string;
  readonly endNodeId?: string;
}

export interface LinePiece extends PieceCommon {
  readonly kind: "line";
  readonly from: Vec2;
  readonly to: Vec2;
}

/** An arc: centre + radius (cos a, sin a), a from startRad by sweepRad (positive counter-clockwise). */
export interface ArcPiece extends PieceCommon {
  readonly kind: "arc";
  readonly centre: Vec2;
  readonly radiusMm: number;
  readonly startRad: number;
  readonly sweepRad: number;
}

/** A cubic: for each axis c0 + c1 t + c2 t² + c3 t³, t from 0 to 1. */
export interface CubicPiece extends PieceCommon {
  readonly kind: "cubic";
  readonly first: readonly [number, number, number, number];
  readonly second: readonly [number, number, number, number];
}

/** One smooth piece of a curve, over t from 0 to 1. */
export type CurvePiece = LinePiece | ArcPiece | CubicPiece;

/**
 * A compiled path: pieces end to end, and the arc length at the start of each. A radiused node is two half
 * arcs, so that every node lies at an end of a piece (the node itself is the middle of its arc).
 */
export interface Curve {
  readonly closed: boolean;
  readonly pieces: readonly CurvePiece[];
  readonly startsMm: readonly number[];
  readonly lengthMm: number;
}

/** Position, unit tangent and signed curvature (positive turning left, from axis 0 toward axis 1) on a curve. */
export interface CurveFrame {
  readonly at: Vec2;
  readonly tangent: Vec2;
  readonly curvaturePerMm: number;
}
