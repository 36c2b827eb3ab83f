import type { FlatPoint } from "../foundation/index.ts";

/** Why a row is in the table. */
export type RowReason = "station" | "corner" | "slot" | "extra";

/** Marks across the strip at one place along the datum: offsets from the datum to every edge there, ascending. */
export interface MarkingRow {
  readonly alongMm: number;
  readonly offsetsMm: readonly number[];
  /**
   * The bevel off square of the edge at each offset, rad; 0 where it is cut square, at a corner the larger of both.
   * Positive leaves the face longer that looks away from the reader: the air face, on a fence the outboard face.
   */
  readonly bevelsRad: readonly number[];
  readonly reason: RowReason;
}

/** How to mark a strip out with tape and square; the datum is parallel to u. */
export interface MarkingTable {
  readonly stripId: string;
  /** The flat point where the datum starts: alongMm 0, offset 0. */
  readonly origin: FlatPoint;
  readonly rows: readonly MarkingRow[];
  /** What the marks are meant to be joined with: between so few rows straight lines would miss. */
  readonly joinedBy: "straight lines" | "batten";
  /** Largest distance from the true edge when marks are joined straight, and with a batten (natural spline). */
  readonly straightMissMm: number;
  readonly battenMissMm: number;
}
