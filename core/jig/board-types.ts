import type { PlanPoint } from "../foundation/index.ts";

/** One sheet of the baseboard, seen from above: its least and greatest corner. */
export interface BoardSheet {
  readonly id: string;
  readonly corners: readonly [PlanPoint, PlanPoint];
}

/** Four marks on the board, in order around it, and the distance that both pairs across have when it is square. */
export interface SquareCheck {
  readonly marks: readonly [PlanPoint, PlanPoint, PlanPoint, PlanPoint];
  readonly diagonalMm: number;
}

/** A slot through the board for a tab of a rib. */
export interface BoardSlot {
  readonly ribId: string;
  readonly corners: readonly [PlanPoint, PlanPoint];
}

/**
 * One place where a rib stands on a board that was measured: how high the board lies there over its level, by which the
 * foot is cut, and what goes under it where it was cut for a level board (the highest place gets nothing).
 */
export interface BoardShim {
  readonly ribId: string;
  readonly at: PlanPoint;
  readonly boardMm: number;
  readonly packingMm: number;
}

/** A post in place of ribs: its height at its middle, and how its top slopes, positive where it rises rearward or to the right. */
export interface Post {
  readonly id: string;
  readonly ribId: string;
  readonly at: PlanPoint;
  readonly heightMm: number;
  readonly slopeAlongRad: number;
  readonly slopeAcrossRad: number;
  readonly partId: string;
}

/** A fence that stands in the jig before the sheets: heights of the foam's lower and upper edge above the board. */
export interface FenceStand {
  readonly partId: string;
  /** The ribs that are left out, because the fence runs along in them and carries the sheet there. */
  readonly inPlaceOf: readonly string[];
  readonly stations: readonly {
    readonly alongMm: number;
    readonly at: PlanPoint;
    readonly lowerMm: number;
    readonly upperMm: number;
  }[];
}

/** What keeps the shell from lifting: a part that reaches under the wood of a rib, how far, and where. */
export interface ReleaseLock {
  readonly ribId: string;
  readonly by: "fence" | "wing" | "sheet";
  readonly partId: string;
  readonly overMm: number;
  readonly at: PlanPoint;
  /** Where along the rib wood is in the way, and how high above the board the rib may stand there. */
  readonly alongMm: readonly [fromMm: number, toMm: number];
  readonly openToMm: number;
}

/** How the shell comes off its ribs. */
export interface Release {
  readonly direction: "straight up from the board";
  /** The steepest slope of the face on the ribs: the nearer to upright, the more it clings. */
  readonly steepestRad: number;
  readonly locks: readonly ReleaseLock[];
}
