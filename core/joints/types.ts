import type { PlanPoint } from "../foundation/index.ts";

/** Where two parts meet, as the joint is cut. */
export type JointCut = "square" | "mitre" | "butt";

export type JointKind = "corner" | "centre" | "shared edge" | "fence seat";

/** One joint between two parts along a stretch of edge. */
export interface Joint {
  /** `S1/S2R`, with a count behind it where two parts meet more than once. */
  readonly id: string;
  readonly kind: JointKind;
  readonly partIds: readonly [string, string];
  readonly edgeIds: readonly [string, string];
  /** Length at the drawn edge, mm. */
  readonly lengthMm: number;
  /** Fold φ between the normals at both ends of the stretch, rad; positive when the core lies inside the fold. */
  readonly foldRad: readonly [number, number];
  readonly cut: JointCut;
  /** Bevel of each part's edge off square, rad; positive when the air face is the longer one. */
  readonly bevelRad: readonly [number, number];
  /** How far the neutral fibre of each part ends before the drawn edge (negative: beyond it), mm. */
  readonly setBackMm: readonly [number, number];
  /** End points of the stretch in plan. */
  readonly from: PlanPoint;
  readonly to: PlanPoint;
}

/** How far one edge of a sheet is moved for its joint, at the start and the end of each of its region edges. */
export interface SetBack {
  readonly sheetId: string;
  readonly edgeId: string;
  /** One entry for each region edge with that id, in the order of the region. */
  readonly amountsMm: readonly (readonly [number, number])[];
  readonly bevelRad: readonly [number, number];
}
