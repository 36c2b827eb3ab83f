import type { RunPast } from "../../cutting/index.ts";
import type { PlanPoint } from "../../foundation/index.ts";
import type { LieSettings } from "../../project/index.ts";

/** The foam under one lane, as far as bending goes. */
export interface LaneFoam {
  /** E t³ / 12: N mm² for each mm of width. */
  readonly stiffness: number;
  readonly thicknessMm: number;
  /** What foam and wet skin weigh, N/mm². */
  readonly weightMPa: number;
  /** The strain of its tightest cold bend. */
  readonly strainLimit: number;
}

/** One place of a lane as it is drawn. */
export interface LanePlace {
  /** x of a lane over ribs across, y over ribs along; and the other of the two. */
  readonly placeMm: number;
  readonly asideMm: number;
  /** The length along the foam from the lane's start. */
  readonly alongMm: number;
  /** Height over the jig's zero, in the jig's own attitude. */
  readonly heightMm: number;
  /**
   * What the foam must be bent away from flat: its turn summed over its length, so that its second derivative is the
   * curvature it is forced into, however steep it lies. Slots and planks lie in their shape and add nothing.
   */
  readonly forcedMm: number;
  /** d forced / d along. */
  readonly forcedSlope: number;
  /** The share of its weight that is square to it. */
  readonly upShare: number;
}

/** A line over the foam of one part, over the ribs that it lies on, where nothing interrupts it. */
export interface Lane {
  readonly partId: string;
  /** The direction of the ribs that carry it. */
  readonly over: "across" | "along";
  readonly places: readonly LanePlace[];
  /** From where to where along it the drawn foam reaches; what lies beyond runs past and is trimmed off. */
  readonly netMm: readonly [fromMm: number, toMm: number];
  /** Which ends reach beyond their last rib without anything beside them: there the foam hangs free. */
  readonly hangsFree: readonly [boolean, boolean];
  /** How wide the part is aside, at most. */
  readonly widthMm: number;
  readonly foam: LaneFoam;
}

/** A rib as a lane meets it. */
export interface LaneSupport {
  readonly ribId: string;
  readonly placeMm: number;
  /** How much higher it holds the foam than drawn: shims, over-bend. */
  readonly liftMm: number;
}

/** How far the foam lies from the drawn shape at one place, mm, up in the jig's attitude; the sum and its two causes. */
export interface LieStation {
  readonly at: PlanPoint;
  /** The length along the foam from the line's start, and how high the drawn face lies above the baseboard. */
  readonly alongMm: number;
  readonly heightMm: number;
  readonly errorMm: number;
  readonly sagMm: number;
  readonly battenMm: number;
}

/** What a hand's push does between two ribs, or beyond the last. */
export interface LiePush {
  readonly at: PlanPoint;
  readonly alongMm: number;
  readonly deflectionMm: number;
  /** Of the foam's limit: all of it, and what the bend alone takes. */
  readonly strainShare: number;
  readonly bendShare: number;
}

/** How one lane lies on its ribs. */
export interface LieLine {
  readonly partId: string;
  readonly over: "across" | "along";
  /** How wide the part is aside, at most. */
  readonly widthMm: number;
  /** The ribs that it lies on, in their order along it, and at which length. */
  readonly ribIds: readonly string[];
  readonly ribsMm: readonly number[];
  readonly stations: readonly LieStation[];
  /** The same where foam runs past the trim line: it is trimmed off, and not judged. */
  readonly past: readonly LieStation[];
  /** How it would lie if it ended at the trim lines; empty where nothing runs past. */
  readonly without: readonly LieStation[];
  /** One for every span, and for an end that reaches far beyond its rib. */
  readonly pushes: readonly LiePush[];
  /** What each rib gives for each mm of width, N/mm; negative where it must hold the foam down. */
  readonly forcesPerMm: readonly number[];
}

/** What a stretch of a lane, between two ribs or beyond one, is judged by: 1 is just allowed. */
export interface StretchShare {
  /** The ribs at its ends; one where it reaches beyond the last. */
  readonly ribIds: readonly string[];
  readonly by: LieLimit;
  readonly share: number;
}

/** What asks for a rib: the shape that the skin freezes, or a hand's push: how far it gives, how it strains the foam. */
export type LieLimit = "shape" | "give" | "strain";

/** The place where the foam lies farthest off its shape, over the whole tray or one part. */
export interface LieWorst extends LieStation {
  readonly partId: string;
  readonly ribIds: readonly string[];
}

/** The place where a hand's push gives or strains most. */
export interface LieWorstPush extends LiePush {
  readonly partId: string;
  readonly ribIds: readonly string[];
}

/** What one rib gives one part, over its width. */
export interface RibForce {
  readonly ribId: string;
  readonly partId: string;
  /** What the foam presses on it with, and what it must be held down with where it would lift off; N. */
  readonly pressN: number;
  readonly holdDownN: number;
}

/** What would ask for a further rib beside this one first. */
export interface RibLimit {
  readonly ribId: string;
  readonly by: LieLimit;
  readonly share: number;
}

/** A place where laid foam is measured: over a rib, with the drawn height of the foam's face that looks up. */
export interface CheckPlace {
  readonly ribId: string;
  readonly partId: string;
  readonly at: PlanPoint;
  /** Above the baseboard. */
  readonly drawnMm: number;
}

/** A rigid move that takes off-ness away: lift at the origin of the plan, and slopes rearward and to the right. */
export interface RigidFit {
  readonly liftMm: number;
  readonly slopeX: number;
  readonly slopeY: number;
}

/** One measured height against the drawn one; up is positive. */
export interface MeasuredPlace {
  readonly at: PlanPoint;
  readonly ribId: string;
  readonly measuredMm: number;
  readonly drawnMm: number;
  readonly offMm: number;
  /** What is left of it once the tray as a whole is moved as the fit says. */
  readonly leftMm: number;
}

/** The laid foam as it was measured. */
export interface AsBuilt {
  readonly places: readonly MeasuredPlace[];
  /** How the whole stands off: only its shape is wrong beyond that. */
  readonly fit: RigidFit;
  /** Positive: raise the rib by so much; negative: take so much off. */
  readonly shims: readonly { readonly ribId: string; readonly byMm: number }[];
}

/** Foam that runs past the trim line of a bent edge, and what that is good for: how the end of the sheet lies with it and without. */
export interface LiePast {
  readonly partIds: readonly string[];
  readonly edgeIds: readonly string[];
  readonly edgeName: string;
  readonly toward: RunPast["toward"];
  readonly lengthMm: number;
  /** The rib that it is held on; absent where none stands there. */
  readonly ribId?: string;
  /** The worst from the last rib but one to the trim line, mm, up in the jig's attitude. */
  readonly withMm: number;
  readonly withoutMm: number;
}

/** How the foam lies on the ribs. */
export interface Lie {
  readonly settings: LieSettings;
  readonly lines: readonly LieLine[];
  /** One for each part that lies on ribs, the worst first. */
  readonly worst: readonly LieWorst[];
  readonly pushed: readonly LieWorstPush[];
  readonly forces: readonly RibForce[];
  readonly limits: readonly RibLimit[];
  readonly pasts: readonly LiePast[];
  /** Ribs that stand where an opening is: they carry the foam on its sides only. */
  readonly inOpenings: readonly string[];
  /** Parts of which some line lies on fewer than two ribs: what they do there is not known. */
  readonly unheld: readonly string[];
  /** Where laid foam is measured, and what was measured. */
  readonly checks: readonly CheckPlace[];
  readonly asBuilt?: AsBuilt;
}
