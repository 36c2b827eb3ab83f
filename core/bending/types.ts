import type { BendMethod, Origin, Project } from "../project/index.ts";
import type { SlotSide } from "./relief-slots.ts";

/** How a stretch of a sheet can be made of its foam. */
export type BendVerdict = "flat" | "bend cold" | "relief slots" | "planks" | "not with this foam";

export type BendFace = "upper face" | "lower face" | "inboard face" | "outboard face";

/** A stretch of a sheet with one bending verdict, in flat u. */
export interface BendZone {
  readonly fromUMm: number;
  readonly toUMm: number;
  readonly verdict: BendVerdict;
  /** Least radius of the middle of the foam in the zone; absent where it is flat. */
  readonly leastRadiusMm?: number;
  /** Which face is inside the bend. */
  readonly inside?: BendFace;
  /** Outer-fibre strain t / (2 R) of foam that is bent whole. */
  readonly strain: number;
  /** What led to the verdict, and how the bend is made; absent where it is flat, and on transitions. */
  readonly bend?: ZoneBend;
}

export interface ZoneBend {
  /** The whole turn of the zone, rad. */
  readonly turnRad: number;
  /** A place in the middle of the zone, as the document keeps a chosen method: the profile's x, or along the fence's line. */
  readonly atMm: number;
  /** The builder's method, where one is chosen. */
  readonly chosen?: BendMethod;
  /** The place that it was chosen at. */
  readonly chosenAtMm?: number;
  readonly limits: ZoneLimits;
  readonly slots?: ZoneSlots;
  readonly planks?: readonly ZonePlank[];
}

/** The figures that a verdict follows from. */
export interface ZoneLimits {
  /** Least radius of a cold bend of this foam at this thickness, and where it comes from. */
  readonly coldRadiusMm: number;
  readonly coldFrom: Origin | "test";
  /** Relief slots: the web must bend cold itself, and the foam between two slots must stand. Absent where not asked for. */
  readonly slots?: {
    readonly webRadiusMm: number;
    readonly leastWebRadiusMm: number;
    /** Absent for a single slot. */
    readonly toothMm?: number;
    readonly leastToothMm: number;
  };
  /** Planks: none may be narrower than its foam is thick. Absent where not asked for. */
  readonly planks?: { readonly widthMm: number; readonly leastWidthMm: number };
}

export interface ZoneSlots {
  readonly side: SlotSide;
  /** The face that they are cut into. */
  readonly face: BendFace;
  readonly kerfMm: number;
  readonly depthMm: number;
  readonly webMm: number;
  /** The middle of each slot in flat u, ascending. */
  readonly placesUMm: readonly number[];
  readonly turnRad: number;
  readonly closingRad: number;
  /** What stays of each slot's mouth once bent; negative where foam is crushed by so much. */
  readonly mouthMm: number;
  /** Least and most distance between two slots; absent for a single one. */
  readonly pitchMm?: readonly [number, number];
  readonly polygonMm: number;
  /** The section of one slot once bent, mm². */
  readonly fillMm2: number;
  readonly filling: Project["bending"]["slotFilling"];
}

export interface ZonePlank {
  readonly fromUMm: number;
  readonly toUMm: number;
  /** Bevel of its edges off square, rad; the face inside the bend is the shorter one. */
  readonly bevelsRad: readonly [number, number];
  readonly sagittaMm: number;
}
