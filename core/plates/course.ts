import { at, type PlanPoint } from "../foundation/index.ts";
import { type EdgeFrame, endFrame, startFrame } from "./edge-frame.ts";
import type { BaseEdge, PlacedWing } from "./types.ts";

/** A wing as it is drawn on an edge of a loop, before its ends are made. */
export type DrawnWing = Omit<PlacedWing, "startAlongMm" | "endAlongMm"> & {
  readonly startInsetMm: number;
  readonly endInsetMm: number;
};

/** One edge of a loop with its wings from its start to its end, and the frames at both. */
export interface Course {
  readonly edge: BaseEdge;
  readonly lengthMm: number;
  readonly wings: readonly DrawnWing[];
  readonly start: EdgeFrame;
  readonly end: EdgeFrame;
}

/** The edge at `edgeIndex` of a loop with those of the loop's wings that stand on it. */
export function courseOf(edge: BaseEdge, edgeIndex: number, wings: readonly DrawnWing[]): Course {
  const [from, to] = [at(edge.points, 0), at(edge.points, -1)];
  return {
    edge,
    lengthMm: polylineLengthMm(edge.points),
    wings: wings
      .filter((wing) => wing.edgeIndex === edgeIndex)
      .toSorted((a, b) => a.startInsetMm - b.startInsetMm),
    start: startFrame(from, to),
    end: endFrame(from, to),
  };
}

const polylineLengthMm = (points: readonly PlanPoint[]): number =>
  points.reduce((sum, { x, y }, i) => {
    const before = points[i - 1];
    return before ? sum + Math.hypot(x - before.x, y - before.y) : sum;
  }, 0);
