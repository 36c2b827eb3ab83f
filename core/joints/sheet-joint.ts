import type { PlanPoint, Problem } from "../foundation/index.ts";
import type { Sheet } from "../surfaces/index.ts";
import type { Joint, JointCut, JointStation, SetBack } from "./types.ts";

/** A joint between two sheets before it is counted out to hands. */
export interface SheetJoint {
  readonly kind: Joint["kind"];
  readonly sheets: readonly [Sheet, Sheet];
  readonly edgeIds: readonly [string, string];
  /** The second sheet meets the first with its image across the centre line. */
  readonly isWithImage?: boolean;
  readonly lengthMm: number;
  readonly cut: JointCut;
  readonly through?: 0 | 1;
  /** At least the start and the end. */
  readonly stations: readonly JointStation[];
  readonly from: PlanPoint;
  readonly to: PlanPoint;
}

/** What one way of meeting gives: joints, the set-backs that they ask for, and what does not meet. */
export interface Meetings {
  readonly joints: readonly SheetJoint[];
  readonly setBacks: readonly SetBack[];
  readonly problems: readonly Problem[];
}

/** The glue line's width, and the widest gap that the glue fills, mm. */
export interface GlueLine {
  readonly gapMm: number;
  readonly gapLimitMm: number;
}
