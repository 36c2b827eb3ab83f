import { at, distanceFlat } from "../foundation/index.ts";
import { courseOf, type DrawnWing } from "./course.ts";
import { endWing } from "./course-ends.ts";
import type { BaseEdge, PlacedWing, PlateEdge, PlateLoop } from "./types.ts";
import { walkCourse } from "./walk-course.ts";
import { allTried, type Tried } from "./wing-trouble.ts";

/** The flat outline of one loop of the base with its wings, and the wings at their places. */
export interface WingLoop {
  readonly loop: PlateLoop;
  readonly wings: readonly PlacedWing[];
}

/**
 * Walks round a loop of the base and unfolds its wings: the drawn edge, a relief, out along a wing's side, its free
 * edge, back, and on. Gives the first trouble instead where a wing cannot be made.
 */
export function wingLoop(loop: readonly BaseEdge[], drawn: readonly DrawnWing[]): Tried<WingLoop> {
  const courses = loop.map((edge, i) => courseOf(edge, i, drawn));
  const ended = allTried(
    courses.map((course, i) => allTried(course.wings.map((_, k) => endWing(courses, i, k)))),
  );
  if (!ended.ok) return ended;
  const edges: PlateEdge[] = [];
  for (const [i, course] of courses.entries()) {
    const wings = at(ended.value, i);
    const before = at(ended.value, i - 1).at(-1);
    const after = at(ended.value, (i + 1) % courses.length)[0];
    const cutsMm = [before?.end.neighbourCutMm ?? 0, after?.start.neighbourCutMm ?? 0] as const;
    const walked = walkCourse(course, wings, cutsMm);
    if (walked) edges.push(...walked);
    else {
      const wing =
        course.wings[0] ?? at(courses, i - 1).wings.at(-1) ?? at(courses, (i + 1) % courses.length).wings[0];
      if (wing) return { ok: false, trouble: { wing, kind: "no room" } };
    }
  }
  return {
    ok: true,
    value: { loop: { edges: joinEnds(edges) }, wings: ended.value.flat().map(({ placed }) => placed) },
  };
}

/** Stretches end to end to the last digit: each begins where the one before ends, and those without length go. */
function joinEnds(edges: readonly PlateEdge[]): readonly PlateEdge[] {
  const long = edges.filter(
    ({ points }) => distanceFlat(at(points, 0), at(points, -1)) > SAME_MM || points.length > 2,
  );
  const joined = long.map((edge, i) => ({
    ...edge,
    points: [at(at(long, i - 1).points, -1), ...edge.points.slice(1)],
  }));
  return mergeSame(joined);
}

/** Two ends of a walk nearer than this are one point; what is drawn is never so near. */
const SAME_MM = 1e-7;

/** Stretches of one drawn edge that follow on one another, such as a line and the arc at its end, are one edge. */
function mergeSame(edges: readonly PlateEdge[]): readonly PlateEdge[] {
  const merged: PlateEdge[] = [];
  for (const edge of edges) {
    const before = merged.at(-1);
    if (before?.edgeId === edge.edgeId && edge.role === "base") {
      merged[merged.length - 1] = { ...before, points: [...before.points, ...edge.points.slice(1)] };
    } else merged.push(edge);
  }
  const [first, last] = [at(merged, 0), at(merged, -1)];
  if (merged.length < 2 || first.edgeId !== last.edgeId || first.role !== "base") return merged;
  return [{ ...first, points: [...last.points, ...first.points.slice(1)] }, ...merged.slice(1, -1)];
}
