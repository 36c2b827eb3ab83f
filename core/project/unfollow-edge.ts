import {
  type ArcPiece,
  type CurvePiece,
  endOfPiece,
  frameOnPiece,
  pieceLengthMm,
  startOfPiece,
} from "../curves/index.ts";
import { add2, at, dot2, scale2, type Vec2 } from "../foundation/index.ts";
import { compileItems } from "./compile-items.ts";
import { editPlanLine, planLineOf } from "./edit-lines.ts";
import type { FollowPiece, PlanElement, PlanNode, Project } from "./schema.ts";

/**
 * The document with a following piece given nodes of its own where it runs now: corners with their radii where
 * lines meet, and nodes along curves so close that the spline through them stays within a hundredth of a
 * millimetre. Their ids are the piece's own with a count. The same document where the piece has no course.
 */
export function unfollowEdge(project: Project, itemId: string, followId: string): Project {
  const pieces = compileItems(project).get(itemId)?.stretches[followId];
  if (!pieces) return project;
  return editPlanLine(project, itemId, (line) => {
    const taken = new Set(line.elements.map(({ id }) => id));
    const elements = line.elements.flatMap((element): readonly PlanElement[] =>
      element.kind === "follow" && element.id === followId ? nodesAlong(pieces, element, taken) : [element],
    );
    return { ...line, elements };
  });
}

/** Every piece in the document that follows an edge of one item given nodes of its own, so that the item may go. */
export function unfollowItem(project: Project, followedId: string): Project {
  const pieces = project.items.flatMap((item) =>
    planLineOf(item).elements.flatMap((element) =>
      element.kind === "follow" && element.edge.itemId === followedId ? [[item.id, element.id] as const] : [],
    ),
  );
  return pieces.reduce((kept, [itemId, followId]) => unfollowEdge(kept, itemId, followId), project);
}

/** A straight run, a corner between two lines with the arc in it, or a stretch of a curve. */
type Course =
  | { readonly kind: "line"; readonly from: Vec2 }
  | { readonly kind: "corner"; readonly at: Vec2; readonly radiusMm: number }
  | { readonly kind: "curve"; readonly from: Vec2; readonly startRad: number; readonly endRad: number };

function nodesAlong(
  pieces: readonly CurvePiece[],
  follow: FollowPiece,
  taken: ReadonlySet<string>,
): readonly PlanNode[] {
  const courses = coursesOf(pieces).filter(
    (course, i, all) => !(course.kind === "line" && all[i - 1]?.kind === "corner"),
  );
  const prefix = freePrefix(follow.id, taken, courses.length + 1);
  const nodes = courses.map((course, i): PlanNode => {
    const before = courses[i - 1];
    const place = course.kind === "corner" ? course.at : course.from;
    return {
      kind: "node",
      id: `${prefix}${i + 1}`,
      x: place[0],
      y: place[1],
      next: course.kind === "curve" ? "curve" : "line",
      ...(course.kind === "corner" ? { radiusMm: course.radiusMm } : {}),
      ...tangentsAt(before, course),
      ...(i === 0 && follow.edgeName !== undefined ? { edgeName: follow.edgeName } : {}),
    };
  });
  const [firstNode, ...rest] = nodes;
  const endPiece = at(pieces, -1);
  const end = endOfPiece(endPiece);
  const lastNode: PlanNode = {
    kind: "node",
    id: `${prefix}${courses.length + 1}`,
    x: end[0],
    y: end[1],
    next: follow.next,
    meets: "corner",
    tangentInRad: directionAt(endPiece, 1),
    tangentOutRad: directionAt(endPiece, 1),
  };
  const start: PlanNode | undefined = firstNode && {
    ...firstNode,
    meets: "corner",
    tangentInRad: directionAt(at(pieces, 0), 0),
    tangentOutRad: directionAt(at(pieces, 0), 0),
  };
  return start ? [start, ...rest, lastNode] : [];
}

/** Two directions nearer than this go on smoothly. */
const SMOOTH_RAD = 1e-6;

function tangentsAt(before: Course | undefined, course: Course): Partial<PlanNode> {
  const arrives = before?.kind === "curve" ? before.endRad : undefined;
  const leaves = course.kind === "curve" ? course.startRad : undefined;
  const isSmooth =
    arrives !== undefined &&
    leaves !== undefined &&
    Math.abs(Math.atan2(Math.sin(leaves - arrives), Math.cos(leaves - arrives))) < SMOOTH_RAD;
  if (isSmooth || (arrives === undefined && leaves === undefined)) return {};
  return {
    meets: "corner",
    ...(arrives === undefined ? {} : { tangentInRad: arrives }),
    ...(leaves === undefined ? {} : { tangentOutRad: leaves }),
  };
}

function coursesOf(pieces: readonly CurvePiece[]): readonly Course[] {
  const courses: Course[] = [];
  for (let i = 0; i < pieces.length; i++) {
    const piece = at(pieces, i);
    const corner = cornerAt(pieces, i);
    if (corner) {
      courses.push(corner);
      i++;
    } else if (piece.kind === "line") courses.push({ kind: "line", from: piece.from });
    else courses.push(...curveCourses(piece));
  }
  return courses;
}

/** The corner that two halves of an arc between two lines round off. */
function cornerAt(pieces: readonly CurvePiece[], index: number): Course | undefined {
  const [before, first, second, after] = [-1, 0, 1, 2].map((step) => pieces[index + step]);
  if (before?.kind !== "line" || after?.kind !== "line") return undefined;
  if (first?.kind !== "arc" || second?.kind !== "arc" || !isOneArc(first, second)) return undefined;
  const tangentMm = first.radiusMm * Math.tan(Math.abs(first.sweepRad + second.sweepRad) / 2);
  const corner = add2(startOfPiece(first), scale2(frameOnPiece(first, 0).tangent, tangentMm));
  return { kind: "corner", at: corner, radiusMm: first.radiusMm };
}

const isOneArc = (a: ArcPiece, b: ArcPiece): boolean =>
  a.radiusMm === b.radiusMm && a.centre[0] === b.centre[0] && a.centre[1] === b.centre[1];

/** A spline through points on an arc of radius R, h apart, misses it by about h⁴ / (384 R³): 0.002 mm at 10° on R 1 m. */
const MOST_TURN_RAD = Math.PI / 18;
const MOST_STEP_MM = 40;
const LEAST_STEPS = 4;

function curveCourses(piece: CurvePiece): readonly Course[] {
  const turnRad = turnOf(piece);
  const steps = Math.max(
    LEAST_STEPS,
    Math.ceil(turnRad / MOST_TURN_RAD),
    Math.ceil(pieceLengthMm(piece) / MOST_STEP_MM),
  );
  return Array.from({ length: steps }, (_, i) => ({
    kind: "curve",
    from: frameOnPiece(piece, i / steps).at,
    startRad: directionAt(piece, i / steps),
    endRad: directionAt(piece, (i + 1) / steps),
  }));
}

/** The sum of the turns between a few tangents along a piece. */
function turnOf(piece: CurvePiece): number {
  const tangents = Array.from({ length: 17 }, (_, i) => frameOnPiece(piece, i / 16).tangent);
  return tangents
    .slice(1)
    .reduce(
      (sum, tangent, i) => sum + Math.acos(Math.min(1, Math.max(-1, dot2(tangent, at(tangents, i))))),
      0,
    );
}

function directionAt(piece: CurvePiece, t: number): number {
  const { tangent } = frameOnPiece(piece, t);
  return Math.atan2(tangent[1], tangent[0]);
}

/** A beginning for node ids that none of `count` counted ids in the line has yet. */
function freePrefix(followId: string, taken: ReadonlySet<string>, count: number): string {
  for (let round = 0; ; round++) {
    const prefix = `${followId.slice(0, 30)}${round === 0 ? "-" : `-${round}-`}`;
    const isFree = Array.from({ length: count }, (_, i) => `${prefix}${i + 1}`).every((id) => !taken.has(id));
    if (isFree) return prefix;
  }
}
