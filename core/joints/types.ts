import type { PlanPoint, SpacePoint } from "../foundation/index.ts";

/** Where two parts meet, as the joint is cut. */
export type JointCut = "square" | "mitre" | "butt";

export type JointKind = "corner" | "centre" | "shared edge" | "fence seat";

/** A joint at one place along it. */
export interface JointStation {
  /** Along the drawn edge from the joint's start, mm. */
  readonly alongMm: number;
  readonly at: SpacePoint;
  /** Fold φ between the normals, rad; positive when the core lies inside the fold. */
  readonly foldRad: number;
  /** Bevel of each part's edge off square, rad; positive when the air face is the longer one. */
  readonly bevelRad: readonly [number, number];
  /** How far the neutral fibre of each part ends before the drawn edge (negative: beyond it), mm. */
  readonly setBackMm: readonly [number, number];
}

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
  /** Of a butt: which of the two parts runs through. */
  readonly through?: 0 | 1;
  /** Bevel of each part's edge off square at the start, rad; positive when the air face is the longer one. */
  readonly bevelRad: readonly [number, number];
  /** How far the neutral fibre of each part ends before the drawn edge (negative: beyond it) at the start, mm. */
  readonly setBackMm: readonly [number, number];
  /** The joint along its length, start and end included; straight between two of them to a hundredth of a mm. */
  readonly stations: readonly JointStation[];
  /** End points of the stretch in plan. */
  readonly from: PlanPoint;
  readonly to: PlanPoint;
}

/** How far one region edge is moved for its joint, and its bevel, at shares of its trace, ascending from 0 to 1. */
export interface EdgeSetBack {
  readonly shares: readonly number[];
  readonly amountsMm: readonly number[];
  readonly bevelsRad: readonly number[];
  /** Whether a neighbour lies along it anywhere. */
  readonly isJoined: boolean;
}

/** How one drawn edge of a sheet is moved for its joint: one entry for each region edge with that id, in their order. */
export interface SetBack {
  readonly sheetId: string;
  readonly edgeId: string;
  readonly edges: readonly EdgeSetBack[];
}

/** Edges of two items that lie on each other though neither follows the other: to be joined if the builder likes. */
export interface JointOffer {
  readonly first: { readonly itemId: string; readonly edgeId: string };
  readonly second: { readonly itemId: string; readonly edgeId: string };
  readonly lengthMm: number;
  /** The widest miss between the two, mm. */
  readonly gapMm: number;
}
