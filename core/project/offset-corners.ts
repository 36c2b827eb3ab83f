import { derivativeOnPiece, frameOnPiece } from "../curves/index.ts";
import {
  add2,
  at,
  COINCIDENT_POINTS_MM,
  cross2,
  distance2,
  dot2,
  scale2,
  subtract2,
  unit2,
  type Vec2,
} from "../foundation/index.ts";
import { besideAt, type Course, directionAt, SMOOTH_RAD } from "./line-courses.ts";

/** What becomes of a node: the points that take its place, and where the courses beside it end and begin. */
export interface Corner {
  readonly points: readonly Vec2[];
  readonly endsAt: number;
  readonly beginsAt: number;
}

export function cornerAt(
  courses: readonly Course[],
  index: number,
  closed: boolean,
  offs: readonly number[],
): Corner | undefined {
  const beforeIndex = closed ? (index - 1 + courses.length) % courses.length : index - 1;
  const [before, after] = [courses[beforeIndex], courses[index]];
  const [offBefore, offMm] = [offs[beforeIndex] ?? 0, offs[index] ?? 0];
  if (!before || !after) {
    const end = after ? besideAt(after, 0, offMm) : before && besideAt(before, 1, offBefore);
    return end && { points: [end], endsAt: 1, beginsAt: 0 };
  }
  const [arriving, leaving] = [directionAt(before, 1), directionAt(after, 0)];
  const turn = cross2(arriving, leaving);
  const isAhead = dot2(arriving, leaving) > 0;
  if (isAhead && Math.abs(turn) < SMOOTH_RAD && offBefore === offMm)
    return { points: [besideAt(after, 0, offMm)], endsAt: 1, beginsAt: 0 };
  if (Math.abs(turn) < SMOOTH_RAD) return undefined;
  const [from, to] = [besideAt(before, 1, offBefore), besideAt(after, 0, offMm)];
  const mitre = add2(from, scale2(arriving, cross2(subtract2(to, from), leaving) / turn));
  if (before.kind === "line" && after.kind === "line") return { points: [mitre], endsAt: 1, beginsAt: 0 };
  if (turn * (offMm + offBefore) > 0) return insideCorner(before, after, [offBefore, offMm]);
  return {
    points: [...(before.kind === "cubic" ? [from] : []), mitre, ...(after.kind === "cubic" ? [to] : [])],
    endsAt: 1,
    beginsAt: 0,
  };
}

const MOST_ROUNDS = 40;

/** Where the parallels of two courses cross before their corner: Newton's method on both parameters. */
function insideCorner(
  before: Course,
  after: Course,
  [offBefore, offAfter]: readonly [number, number],
): Corner | undefined {
  let [t, s] = [1, 0];
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const gap = subtract2(besideAt(before, t, offBefore), besideAt(after, s, offAfter));
    if (Math.hypot(...gap) < 1e-10) break;
    const [a, b] = [rateBeside(before, t, offBefore), rateBeside(after, s, offAfter)];
    const det = cross2(a, b);
    if (Math.abs(det) < 1e-12) return undefined;
    t -= cross2(gap, b) / det;
    s -= cross2(gap, a) / det;
  }
  const points = [besideAt(before, t, offBefore), besideAt(after, s, offAfter)] as const;
  const isMet = distance2(points[0], points[1]) < 1e-6 && t > 0 && t <= 1 && s >= 0 && s < 1;
  return isMet ? { points: [points[0]], endsAt: t, beginsAt: s } : undefined;
}

/** How fast the parallel runs: the curve's own speed, less what its bend takes. */
function rateBeside(course: Course, t: number, offMm: number): Vec2 {
  return scale2(derivativeOnPiece(course, t), 1 - offMm * frameOnPiece(course, t).curvaturePerMm);
}

const CHECKS = 32;

/** Whether a course is left at all: a line of some length in its own direction, no bend tighter than the distance. */
export function fits(course: Course, index: number, corners: readonly Corner[], offMm: number): boolean {
  const own = at(corners, index);
  const next = at(corners, (index + 1) % corners.length);
  if (course.kind === "line") {
    const [from, to] = [at(own.points, -1), at(next.points, 0)];
    return dot2(subtract2(to, from), unit2(subtract2(course.to, course.from))) > COINCIDENT_POINTS_MM;
  }
  if (next.endsAt <= own.beginsAt) return false;
  return Array.from({ length: CHECKS + 1 }, (_, i) => i / CHECKS).every(
    (t) => 1 - offMm * frameOnPiece(course, t).curvaturePerMm > 0,
  );
}
