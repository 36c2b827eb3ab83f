export type BendVerdict = "flat" | "bend cold" | "too tight";

/** A stretch of a sheet with one bending verdict, in flat u. */
export interface BendZone {
  readonly fromUMm: number;
  readonly toUMm: number;
  readonly verdict: BendVerdict;
  /** Least radius of the neutral fibre in the zone; absent where it is flat. */
  readonly leastRadiusMm?: number;
  /** Which face is inside the bend. */
  readonly inside?: "upper face" | "lower face" | "inboard face" | "outboard face";
  /** Outer-fibre strain t / (2 R). */
  readonly strain: number;
}
