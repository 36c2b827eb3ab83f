import type { BendFace } from "../bending/index.ts";
import type { FlatPoint } from "../foundation/index.ts";
import type { FlatLoop, PartEdge } from "../patterns/index.ts";

/** A cut that divides a part: along a ruling (u constant) or across the rulings (v constant). */
export interface Seam {
  /** `S1-a/S1-b`. */
  readonly id: string;
  readonly partId: string;
  readonly stripIds: readonly [string, string];
  readonly runs: "along ruling" | "across rulings";
  readonly atMm: number;
  readonly lengthMm: number;
  /** Between planks: the bevel of both edges off square, rad, as that of a part's edge; absent where it is cut square. */
  readonly bevelRad?: number;
  /** How long each side is tapered, mm; absent where it is butted. The first strip's taper is in the face shown. */
  readonly scarfMm?: number;
}

/** Where the taper of a scarf begins on a strip, which face it is in, and how long it is. */
export interface StripTaper {
  readonly seamEdgeId: string;
  readonly lineMm: readonly FlatPoint[];
  readonly face: BendFace;
  readonly lengthMm: number;
}

/** A relief slot across a strip: where its middle runs, its stretches along v, and what glue it takes when bent. */
export interface StripSlot {
  readonly uMm: number;
  readonly stretchesMm: readonly (readonly [number, number])[];
  readonly lengthMm: number;
  readonly kerfMm: number;
  readonly depthMm: number;
  /** The face that it is cut into. */
  readonly face: BendFace;
  readonly fillMm3: number;
}

/** A piece that is cut from stock: the whole part, or one of its divisions. */
export interface Strip {
  /** The part's id when undivided, else `S1-a`, `S1-b` from front to rear. */
  readonly id: string;
  readonly partId: string;
  readonly loops: readonly FlatLoop[];
  readonly outlineMm: readonly FlatPoint[];
  readonly holesMm: readonly (readonly FlatPoint[])[];
  /**
   * The lines to cut by: outline and holes, moved out by the trim allowance on free edges and by the kerf as the
   * blade's side asks. "waste": by nothing, and the blade takes the waste side of the line; "middle": by half the
   * kerf, and the middle of the blade runs on the line; "part": by the whole kerf, and the blade takes the part
   * side of the line. Each time the blade's inner face leaves the part at its size.
   */
  readonly cutLinesMm: readonly (readonly FlatPoint[])[];
  /** Tapers of its scarfs; absent where there are none. */
  readonly tapers?: readonly StripTaper[];
  readonly edges: readonly PartEdge[];
  readonly areaMm2: number;
  /** Its relief slots; absent where it has none. */
  readonly slots?: readonly StripSlot[];
  /** The stock it comes from; absent where none fits (a problem says so). */
  readonly stockId?: string;
}
