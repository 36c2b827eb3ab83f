import type { FlatPoint, PlanPoint } from "../foundation/index.ts";
import type { Project } from "../project/index.ts";
import type {
  BoardSheet,
  BoardShim,
  BoardSlot,
  FenceStand,
  Post,
  Release,
  SquareCheck,
} from "./board-types.ts";
import type { NoOverBend } from "./laid/find-over-bend.ts";
import type { LiePast } from "./lie/types.ts";

/** One height along a rib, measured from the baseboard's upper face, in the jig's own attitude. */
export interface RibHeight {
  /** Position along the rib: y for a rib across, x for a rib along, mm in the car's frame. */
  readonly atMm: number;
  /** Height of the resting face at the station plane and at the rib's other face. */
  readonly stationFaceMm: number;
  readonly farFaceMm: number;
  /** Slope across the rib, rad; positive when the far face is higher. */
  readonly bevelRad: number;
  /** The part that rests here. */
  readonly partId: string;
}

/** A half-lap slot where a rib of the other direction crosses. */
export interface RibLap {
  readonly otherId: string;
  readonly from: "top" | "below";
  readonly fromMm: number;
  readonly toMm: number;
  /** Where the slot ends, height above the baseboard. */
  readonly levelMm: number;
}

/** A notch in a rib's top that a fence hangs in, open upward; its mouth is wider by the fillet on both sides. */
export interface RibNotch {
  readonly fencePartId: string;
  readonly fromMm: number;
  readonly toMm: number;
  readonly levelMm: number;
  readonly mouthMm: number;
}

/** A hollow in a rib's top under a glued joint, down to a point at its middle. */
export interface RibRelief {
  readonly atMm: number;
  readonly widthMm: number;
  readonly levelMm: number;
  /** The parts, or the strips' one part, that are glued over it. */
  readonly between: readonly [string, string];
  /** Whether the joint crosses the rib or runs along in it. */
  readonly runs: "across" | "along";
}

/** What is cut from board in one piece. */
export interface RibPiece {
  /** The rib's id, or `A3-a`, `A3-b` of a spliced one and `A3-p1` of a plate. */
  readonly id: string;
  readonly outlineMm: readonly FlatPoint[];
  readonly holesMm: readonly (readonly FlatPoint[])[];
}

/** Where two pieces of a rib are joined: butted with a plate over the joint, or by a dovetail. */
export interface RibSplice {
  readonly atMm: number;
  readonly way: "plate" | "dovetail";
  readonly plate?: RibPiece;
  readonly tailMm?: readonly FlatPoint[];
  readonly socketMm?: readonly FlatPoint[];
}

/** One rib set up on the board: which ribs it comes down over, and which of them keep it out. */
export interface AssemblyStep {
  readonly ribId: string;
  readonly over: readonly string[];
  readonly lockedBy: readonly string[];
}

/** One support cut from board: its top is the foam face that rests on it. */
export interface Rib {
  /** `A3` for the third rib across, `L1R` for the first along on the right; of a cradle `CA3`, `CL1R`. */
  readonly id: string;
  readonly name: string;
  readonly stand: "jig" | "cradle";
  /** How the tray lies on it. */
  readonly attitude: "upright" | "inverted";
  readonly runs: "across" | "along";
  /** Station plane: x for a rib across, y for a rib along. */
  readonly atMm: number;
  readonly thicknessMm: number;
  /** Past the trim line of a bent edge: it holds foam that is trimmed off after the first skin. */
  readonly isOutboard: boolean;
  /** The face that lies on the station plane, and which way the body goes from there. */
  readonly stationFace: "front" | "rear" | "right" | "left";
  readonly heights: readonly RibHeight[];
  /** True-size outline at the station face: u along the rib (y or x in the car's frame), v height above the baseboard. */
  readonly outlineMm: readonly FlatPoint[];
  /** Holes to reach through, clockwise. */
  readonly holesMm: readonly (readonly FlatPoint[])[];
  readonly laps: readonly RibLap[];
  readonly notches: readonly RibNotch[];
  readonly reliefs: readonly RibRelief[];
  /** Where it stands on the board, and where it goes down through it, along the rib. */
  readonly standsOn: readonly (readonly [fromMm: number, toMm: number])[];
  readonly tabs: readonly (readonly [fromMm: number, toMm: number])[];
  /** What is sawn: the rib itself, or the pieces of one that is longer than its board. */
  readonly pieces: readonly RibPiece[];
  readonly splices: readonly RibSplice[];
  /** Whether a square cut keeps within the proud limit; if not, bevel as listed. */
  readonly cut: "square" | "bevel";
  /** How far a square cut stands above the foam anywhere over the board's thickness, at worst. */
  readonly mostProudMm: number;
  /** How much higher its top stands than drawn where it changes most, for what is given back; absent where it is as drawn. */
  readonly overBentMm?: number;
  /** Whether the top is one straight line: a line in the cutting list is enough. */
  readonly straightTop: boolean;
  /** The id of the first rib of the same outline; its own id if it is the first. */
  readonly sameAs: string;
}

/** Where everything stands on the baseboard, seen from above, in the car's frame. */
export interface Baseboard {
  readonly attitude: "upright" | "inverted";
  /** Height of the baseboard's upper face above ground (upright) or the level it is turned to (inverted). */
  readonly levelZMm: number;
  readonly corners: readonly [PlanPoint, PlanPoint];
  /** Each rib's line: its station face stands on it, its body lies `toward` from there. */
  readonly lines: readonly {
    readonly ribId: string;
    readonly from: PlanPoint;
    readonly to: PlanPoint;
    readonly toward: "front" | "rear" | "right" | "left";
  }[];
  readonly thicknessMm: number;
  readonly sheets: readonly BoardSheet[];
  readonly square: SquareCheck;
  readonly slots: readonly BoardSlot[];
  /** Empty where nothing was measured. */
  readonly shims: readonly BoardShim[];
}

/** Ribs on a board, in the order in which they are set up. */
export interface RibSet {
  readonly ribs: readonly Rib[];
  readonly baseboard: Baseboard;
  readonly assembly: readonly AssemblyStep[];
  readonly posts: readonly Post[];
  readonly fenceStands: readonly FenceStand[];
  readonly release: Release;
}

/** How the ribs are bent too far for what is given back with one skin, or would be; or why they cannot be. */
export interface OverBending {
  readonly applied: boolean;
  readonly why?: NoOverBend;
  /** The largest share of a bend that is given back. */
  readonly share: number;
  readonly keepXMm: number;
  /**
   * How much higher each rib's top stands for it, mm, where it changes most; and the x, as drawn, of the foam that comes to
   * lie over a rib across (of one along its y).
   */
  readonly ribs: readonly { readonly ribId: string; readonly byMm: number; readonly drawnMm: number }[];
}

export interface Jig extends RibSet {
  /** Absent where nothing is bent cold. */
  readonly overBend?: OverBending;
  /** The ribs that carry the skinned face while the other one is skinned. */
  readonly cradle?: RibSet;
}

/** How one bend of a part is held on the jig, what it gives back, and what wants care. */
export interface BendHold {
  readonly partId: string;
  /** The bend, in flat u. */
  readonly fromUMm: number;
  readonly toUMm: number;
  /** Of foam that is bent cold. */
  readonly holdDown?: HoldDown;
  readonly springback?: Springback;
  readonly cares: readonly BendCare[];
}

export interface HoldDown {
  /** N mm for each mm of width: E t³ / (12 R). */
  readonly momentPerMm: number;
  readonly widthMm: number;
  readonly leverMm: number;
  /** The rib that must hold the part down most, as the foam lies on it; absent where that is not known. */
  readonly ribId?: string;
  /** What that rib, or one at the end of the lever, is held down with. */
  readonly forceN: number;
  readonly by: Project["bending"]["holdBy"];
  /** What one of these holds; a screw no more than its washer may press on the foam. */
  readonly eachN: number;
  /** How many; null where one holds nothing. */
  readonly count: number | null;
}

/** The share of a bend that is given back, the radius then, and the radius to bend to so that the drawn one is left. */
export interface Springback {
  readonly oneSkin: number;
  readonly bothSkins: number;
  readonly radiusAfterOneMm: number;
  readonly radiusAfterBothMm: number;
  readonly overBentOneMm: number;
  readonly overBentBothMm: number;
}

export type BendCare =
  | { readonly kind: "wrong way first"; readonly gapMm: number; readonly leastMm: number }
  | ({ readonly kind: "runs past" } & Pick<
      LiePast,
      "edgeName" | "lengthMm" | "ribId" | "withMm" | "withoutMm"
    >)
  | { readonly kind: "near the edge"; readonly leftMm: number; readonly leastMm: number }
  | { readonly kind: "across a seam"; readonly seamId: string }
  | {
      readonly kind: "slot near an edge";
      readonly slotUMm: number;
      readonly distanceMm: number;
      readonly clearMm: number;
      readonly edgeName: string;
    };
