import {
  type CurvePiece,
  compilePath,
  enclosedAreaMm2,
  endOfPiece,
  frameOnPiece,
  pointOnPiece,
} from "../curves/index.ts";
import { add2, at, leftOf2, ON_CENTRE_LINE_MM, scale2, subtract2, type Vec2 } from "../foundation/index.ts";
import { planPath } from "./paths.ts";
import type { PlanLine, PlanNode } from "./schema.ts";

/** Directions nearer than this go on smoothly. */
export const SMOOTH_RAD = 1e-6;

/** The segment that leaves a node, before radii are put in. */
export type Course = Extract<CurvePiece, { kind: "line" | "cubic" }>;

/** One course for each node that a segment leaves; undefined where the line does not compile. */
export function coursesOf(planLine: PlanLine, nodes: readonly PlanNode[]): readonly Course[] | undefined {
  const compiled = compilePath(planPath(planLine, () => []));
  if (!compiled.ok) return undefined;
  const count = planLine.closed ? nodes.length : nodes.length - 1;
  const courses = nodes.slice(0, count).map((node, index): Course | undefined => {
    if (node.next === "curve")
      return compiled.value.pieces.find(
        (piece): piece is Extract<CurvePiece, { kind: "cubic" }> =>
          piece.kind === "cubic" && piece.edgeId === node.id,
      );
    const after = at(nodes, (index + 1) % nodes.length);
    return { kind: "line", edgeId: node.id, from: [node.x, node.y], to: [after.x, after.y] };
  });
  const sound = courses.filter((course) => course !== undefined);
  return sound.length === count ? sound : undefined;
}

/** 1 where a positive distance lies left of travel, −1 where right. */
export function sideOf(planLine: PlanLine, courses: readonly Course[]): 1 | -1 {
  if (planLine.closed)
    return enclosedAreaMm2(courses.map((piece) => ({ piece, reversed: false }))) > 0 ? -1 : 1;
  const along = subtract2(endOfPiece(at(courses, -1)), pointOnPiece(at(courses, 0), 0));
  return along[0] < 0 ? -1 : 1;
}

/** An edge on the centre line joins its own image: it stays there. */
export const liesOnCentre = (course: Course): boolean =>
  course.kind === "line" &&
  Math.abs(course.from[1]) <= ON_CENTRE_LINE_MM &&
  Math.abs(course.to[1]) <= ON_CENTRE_LINE_MM;

export const directionAt = (course: Course, t: number): Vec2 => frameOnPiece(course, t).tangent;

export const besideAt = (course: Course, t: number, offMm: number): Vec2 =>
  add2(pointOnPiece(course, t), scale2(leftOf2(directionAt(course, t)), offMm));
