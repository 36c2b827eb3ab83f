import type { FlatPoint, PlanPoint } from "../foundation/index.ts";

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

/** One support cut from board: its top is the foam face that rests on it. */
export interface Rib {
  /** `A3` for the third rib across, `L1R` for the first along on the right. */
  readonly id: string;
  readonly name: string;
  readonly runs: "across" | "along";
  /** Station plane: x for a rib across, y for a rib along. */
  readonly atMm: number;
  readonly thicknessMm: number;
  /** The face that lies on the station plane, and which way the body goes from there. */
  readonly stationFace: "front" | "rear" | "right" | "left";
  readonly heights: readonly RibHeight[];
  /** True-size outline at the station face: u along the rib (y or x in the car's frame), v height above the baseboard. */
  readonly outlineMm: readonly FlatPoint[];
  /** Whether a square cut keeps within the proud limit; if not, bevel as listed. */
  readonly cut: "square" | "bevel";
  /** How far a square cut stands above the foam anywhere over the board's thickness, at worst. */
  readonly mostProudMm: number;
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
  readonly lines: readonly { readonly ribId: string; readonly from: PlanPoint; readonly to: PlanPoint }[];
}

export interface Jig {
  readonly ribs: readonly Rib[];
  readonly baseboard: Baseboard;
}
