import type { FlatPoint, PlanPoint, SpacePoint } from "../foundation/index.ts";

/** Which image of the drawing a part is: whole where it is joined to its own image or nothing is mirrored. */
export type PlateHand = "right" | "left" | "whole";

/** One drawn edge of the flat base, in the direction of its loop; several points where it curves. */
export interface BaseEdge {
  /** The drawn edge's id; `.left` behind it on the image. */
  readonly edgeId: string;
  readonly name: string;
  readonly isStraight: boolean;
  readonly points: readonly PlanPoint[];
  /** Which half it belongs to; "both" where a straight edge runs square over the centre line. */
  readonly half: "drawn" | "image" | "both";
}

/** What one bend is made of, all from the metal, the wing's numbers and nothing else. */
export interface BendFigures {
  readonly direction: "up" | "down";
  /** How far the wing is turned, rad, never negative. */
  readonly angleRad: number;
  readonly insideRadiusMm: number;
  readonly thicknessMm: number;
  /** Where the neutral fibre lies, as a fraction of the thickness from the inside. */
  readonly kFactor: number;
  readonly kFactorFrom: "metal" | "typed deduction";
  readonly allowanceMm: number;
  readonly deductionMm: number;
  /** From the mould line of the outer faces back to where the bend begins. */
  readonly setBackMm: number;
  /** The same from the drawn edge, where the air faces would meet: the outer faces of a bend up, the inner of one down. */
  readonly airSetBackMm: number;
  /** The flat of the wing, from the end of the bend to its free edge. */
  readonly flangeMm: number;
  /** Cuts that end a bend inside the sheet: how wide, and how deep from the drawn edge inward. */
  readonly reliefWidthMm: number;
  readonly reliefDepthMm: number;
}

/**
 * A wing at its place on the base. Lengths along its edge from the edge's own start; the feet are where the bend
 * really begins and ends, after reliefs and trimming at corners.
 */
export interface PlacedWing {
  /** The wing's id; `.left` behind it on the image. */
  readonly id: string;
  readonly wingId: string;
  readonly name: string;
  readonly loopIndex: number;
  readonly edgeIndex: number;
  readonly half: BaseEdge["half"];
  readonly figures: BendFigures;
  readonly startAlongMm: number;
  readonly endAlongMm: number;
  readonly startTaperRad: number;
  readonly endTaperRad: number;
}

/** What a stretch of the flat outline is. */
export type PlateEdgeRole = "base" | "relief" | "wing side" | "wing free edge";

/** One labelled stretch of a flat outline, first to last point, both ends included; seen from the upper face. */
export interface PlateEdge {
  readonly edgeId: string;
  readonly name: string;
  readonly role: PlateEdgeRole;
  /** The wing that it belongs to, where it belongs to one. */
  readonly placedWingId?: string;
  readonly points: readonly FlatPoint[];
}

/** A closed flat loop of edges end to end: outlines counter-clockwise, holes clockwise. */
export interface PlateLoop {
  readonly edges: readonly PlateEdge[];
}

/** One bend on the flat pattern; its lines are drawn in pencil and run from the wing's start to its end. */
export interface BendLine {
  /** Of the placed wing: `w1`, or `w1.left`. */
  readonly id: string;
  readonly wingId: string;
  readonly name: string;
  readonly figures: BendFigures;
  readonly lengthMm: number;
  /** Where the bend begins in the base. */
  readonly baseTangent: readonly [FlatPoint, FlatPoint];
  readonly middle: readonly [FlatPoint, FlatPoint];
  /** Where the wing's flat begins. */
  readonly wingTangent: readonly [FlatPoint, FlatPoint];
}

/** The flat sheet of one hand. */
export interface PlatePart {
  /** `P1R`, `P1L`, `P1` when whole. */
  readonly id: string;
  readonly hand: PlateHand;
  /** First the outline, then holes. */
  readonly loops: readonly PlateLoop[];
  readonly bends: readonly BendLine[];
  /** Extent of the flat along u and along v. */
  readonly lengthMm: number;
  readonly widthMm: number;
}

/** Two corners of the air face and the two of the upper face over them. */
export interface MetalLine {
  readonly air: readonly [SpacePoint, SpacePoint];
  readonly upper: readonly [SpacePoint, SpacePoint];
}

/** A wing folded up, in space. Corners: foot at its start, foot at its end, free corner at its end, at its start. */
export interface FoldedWing {
  readonly id: string;
  readonly wingId: string;
  readonly name: string;
  readonly airFace: readonly SpacePoint[];
  readonly upperFace: readonly SpacePoint[];
  /** The bend as lines square to the turn, from the base's tangent to the wing's. */
  readonly bend: readonly MetalLine[];
}

/** The free edge of a wing as other items may follow it: the drawn half, from its start to its end. */
export interface WingEdge extends MetalLine {
  readonly wingId: string;
  readonly startNodeId: string;
  readonly endNodeId: string;
}

/** Why a bend comes when it does. */
export type FoldingReason =
  | "only bend"
  | "shorter flange"
  | "shorter bend"
  | "as drawn"
  | "leans over"
  | "before a leaning wing"
  | "last left";

export interface FoldingStep {
  /** The placed wings that are folded now: a wing and its image are one step. */
  readonly bendIds: readonly string[];
  readonly name: string;
  readonly reason: FoldingReason;
  /**
   * With "leans over" the bends that had to come before, since this wing now stands over them; with "before a leaning
   * wing" the wings that will stand over this bend.
   */
  readonly reasonNames: readonly string[];
  /** Bends made before that stand in the way, where no order avoids it. */
  readonly blockedByNames: readonly string[];
}

/** A folded metal plate: its flat patterns, its shape in space (right or whole hand), and how it is folded. */
export interface FoldedPlate {
  /** `P1`. */
  readonly id: string;
  readonly itemId: string;
  readonly name: string;
  readonly metalId: string;
  readonly metalName: string;
  readonly thicknessMm: number;
  /** Height of the base's air side over the ground. */
  readonly zMm: number;
  readonly parts: readonly PlatePart[];
  /** The base between its bends: outline and holes in plan, as the loops of the pattern run. */
  readonly base: readonly (readonly PlanPoint[])[];
  readonly wings: readonly FoldedWing[];
  readonly wingEdges: readonly WingEdge[];
  readonly folding: readonly FoldingStep[];
  /** Areas of one hand, flat, at the neutral fibre. */
  readonly baseAreaMm2: number;
  readonly bendAreaMm2: number;
  readonly wingAreaMm2: number;
  readonly flatAreaMm2: number;
  /** Of one hand. */
  readonly massKg: number;
}
