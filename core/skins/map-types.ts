import type { PlanPoint } from "../foundation/index.ts";
import type { SkinFaceName } from "./types.ts";

/** A patch as it lies, on a picture: x to the right, y up. */
export interface MappedPatch {
  readonly patchId: string;
  readonly partId: string;
  /** Counted from 1 in the order of the face's sessions; 0 where none is planned. */
  readonly session: number;
  /** Its outline and holes. */
  readonly loopsMm: readonly (readonly PlanPoint[])[];
  /** How its warp runs at its middle, counter-clockwise from x. */
  readonly warpRad: number;
  /** Inside it and clear of laps, for its code; and how far the nearest line is from there. */
  readonly middle: PlanPoint;
  readonly roomMm: number;
  /** On a face laid flat: a patch of the part beside it, so far as it laps onto this one. */
  readonly isOfNeighbour?: true;
}

/** Where two patches of one ply lie over each other. */
export interface MappedLap {
  readonly patchIds: readonly [string, string];
  readonly areaMm2: number;
  /** They are of different sessions: the later laps onto cured cloth. */
  readonly isOnCured: boolean;
  readonly loopsMm: readonly (readonly PlanPoint[])[];
}

export interface MappedPly {
  readonly ply: number;
  /** `2`, or of the plies of zones `reinforcement 1`. */
  readonly name: string;
  readonly patches: readonly MappedPatch[];
  readonly laps: readonly MappedLap[];
}

/** A picture of where patches lie, seen from the outer side of the face: in plan (x rearward), or the face laid flat. */
export interface PatchMap {
  /** `lower face`, or the code of a part's face: `S3-L`, `F1R-O`. */
  readonly id: string;
  readonly face: SkinFaceName;
  readonly frame: "plan" | "flat";
  /** On which side of the picture the front of the car is. */
  readonly front: "left" | "right";
  readonly partIds: readonly string[];
  readonly grounds: readonly {
    readonly partId: string;
    readonly loopsMm: readonly (readonly PlanPoint[])[];
  }[];
  readonly plies: readonly MappedPly[];
}
