import type { PlanPoint } from "../foundation/index.ts";
import type { Joint } from "../joints/index.ts";
import type { LapAtJoint, LapCrossing } from "./types.ts";

/** Joints that end nearer to each other than this meet in a corner, mm. */
const CORNER_MM = 60;

/** The corners of a face at which cloths of two parts both run onto a third, and cross there. */
export function lapCrossings(laps: readonly LapAtJoint[], joints: readonly Joint[]): readonly LapCrossing[] {
  const found = new Map<string, LapCrossing>();
  for (const [i, a] of laps.entries())
    for (const b of laps.slice(i + 1)) {
      if (a.ply !== b.ply || a.ontoPartId !== b.ontoPartId || a.fromPartId === b.fromPartId) continue;
      const [one, other] = [a, b].map((lap) => joints.find(({ id }) => id === lap.jointId));
      if (one && other && meet(one, other))
        found.set(`${a.jointId} ${b.jointId}`, {
          jointIds: [a.jointId, b.jointId],
          fromPartIds: [a.fromPartId, b.fromPartId],
          ontoPartId: a.ontoPartId,
        });
    }
  return [...found.values()];
}

const meet = (one: Joint, other: Joint): boolean =>
  [one.from, one.to].some((a) => [other.from, other.to].some((b) => apart(a, b) < CORNER_MM));

const apart = (a: PlanPoint, b: PlanPoint): number => Math.hypot(b.x - a.x, b.y - a.y);
