import { at } from "../foundation/index.ts";
import { narrowedMm } from "./bend-figures.ts";
import type { Course, DrawnWing } from "./course.ts";
import { inFrame } from "./edge-frame.ts";
import type { PlacedWing } from "./types.ts";
import { slotEnd, type WingEnd, type WingNeighbour, wingEnd } from "./wing-end.ts";
import type { Tried } from "./wing-trouble.ts";

/** A wing with both ends made; the frames of the ends are those at the ends of its edge. */
export interface EndedWing {
  readonly placed: PlacedWing;
  readonly start: WingEnd;
  readonly end: WingEnd;
}

/** Makes the ends of a wing, the k-th on edge i of a loop of courses. */
export function endWing(courses: readonly Course[], i: number, k: number): Tried<EndedWing> {
  const course = at(courses, i);
  const wing = at(course.wings, k);
  const before = course.wings[k - 1];
  const after = course.wings[k + 1];
  if (before && gapMm(before, wing, course) < -TOUCH_MM) {
    return { ok: false, trouble: { wing, kind: "overlap", other: before } };
  }
  const start = before
    ? endBeside(wing, before, wing.startInsetMm, gapMm(before, wing, course))
    : startAtCorner(courses, i);
  const end = after
    ? endBeside(wing, after, wing.endInsetMm, gapMm(wing, after, course))
    : endAtCorner(courses, i);
  if (!start || !end) return { ok: false, trouble: { wing, kind: "no room" } };
  const { startInsetMm: _start, endInsetMm: _end, ...rest } = wing;
  const placed = { ...rest, startAlongMm: start.footMm, endAlongMm: course.lengthMm - end.footMm };
  const widthMm = placed.endAlongMm - placed.startAlongMm;
  if (widthMm < LEAST_WIDTH_MM) return { ok: false, trouble: { wing, kind: "no width" } };
  const { figures } = wing;
  const freeMm = widthMm - narrowedMm(figures, wing.startTaperRad) - narrowedMm(figures, wing.endTaperRad);
  if (freeMm < LEAST_WIDTH_MM) return { ok: false, trouble: { wing, kind: "no free edge" } };
  return { ok: true, value: { placed, start, end } };
}

/** Wings on one edge may touch; a slot parts them. */
const TOUCH_MM = 0.01;

/** A wing narrower than this is a spike that no tool bends. */
const LEAST_WIDTH_MM = 1;

const gapMm = (one: DrawnWing, next: DrawnWing, { lengthMm }: Course): number =>
  next.startInsetMm - (lengthMm - one.endInsetMm);

/** The end of a wing where another stands on the same edge: a slot of its own, or where they are near one for both. */
function endBeside(wing: DrawnWing, other: DrawnWing, insetMm: number, apartMm: number): WingEnd {
  const widthMm = Math.max(wing.figures.reliefWidthMm, other.figures.reliefWidthMm);
  if (apartMm >= 3 * widthMm) return slotEnd(wing.figures, insetMm);
  const depthMm = Math.max(wing.figures.reliefDepthMm, other.figures.reliefDepthMm);
  const middleMm = insetMm - apartMm / 2;
  const footMm = Math.max(insetMm, middleMm + widthMm / 2);
  return {
    kind: "at neighbour",
    footMm,
    relief: [
      [middleMm, -depthMm],
      [footMm, -depthMm],
    ],
  };
}

function startAtCorner(courses: readonly Course[], i: number): WingEnd | undefined {
  const course = at(courses, i);
  const before = at(courses, i - 1);
  const wing = at(course.wings, 0);
  const other = before.wings.at(-1);
  const neighbour: WingNeighbour = {
    points: before.edge.points.toReversed().map((p) => inFrame(course.start, p)),
    ...(other && { wing: { figures: other.figures, insetMm: other.endInsetMm } }),
  };
  return wingEnd(wing.figures, wing.startInsetMm, neighbour);
}

function endAtCorner(courses: readonly Course[], i: number): WingEnd | undefined {
  const course = at(courses, i);
  const after = at(courses, (i + 1) % courses.length);
  const wing = at(course.wings, -1);
  const other = after.wings[0];
  const neighbour: WingNeighbour = {
    points: after.edge.points.map((p) => inFrame(course.end, p)),
    ...(other && { wing: { figures: other.figures, insetMm: other.startInsetMm } }),
  };
  return wingEnd(wing.figures, wing.endInsetMm, neighbour);
}
