import type { PlanPoint } from "../foundation/index.ts";

/** Where two parts meet, as the joint is cut. */
export type JointCut = "square" | "mitre" | "butt";

/** One joint between two parts along a stretch of edge. */
export interface Joint {
  /** `S1/S2R`, with a count behind it where two parts meet twice. */
  readonly id: string;
  readonly kind: "corner" | "centre" | "shared edge" | "fence seat";
  readonly partIds: readonly [string, string];
  readonly edgeIds: readonly [string, string];
  /** Length at the drawn edge, mm. */
  readonly lengthMm: number;
  /** Fold φ between the normals at both ends of the stretch, rad; positive when the core lies inside the fold. */
  readonly foldRad: readonly [number, number];
  readonly cut: JointCut;
  /** Bevel of each part's edge off square, rad. */
  readonly bevelRad: readonly [number, number];
  /** How far the neutral fibre of each part ends before the drawn edge (negative: beyond it), at the start, mm. */
  readonly setBackMm: readonly [number, number];
  /** End points of the stretch in plan. */
  readonly from: PlanPoint;
  readonly to: PlanPoint;
}
