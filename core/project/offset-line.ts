import {
  type CurvePiece,
  compilePath,
  derivativeOnPiece,
  enclosedAreaMm2,
  endOfPiece,
  findSelfCrossings,
  frameOnPiece,
  nearestOnPiece,
  type PathProblem,
  pointOnPiece,
} from "../curves/index.ts";
import {
  add2,
  at,
  COINCIDENT_POINTS_MM,
  cross2,
  distance2,
  dot2,
  leftOf2,
  ON_CENTRE_LINE_MM,
  type Problem,
  scale2,
  subtract2,
  unit2,
  type Vec2,
} from "../foundation/index.ts";
import { moveReferences } from "./delete-node.ts";
import { editItem, editOpening, planLineOf, withPlanLine } from "./edit-lines.ts";
import { nameOfItem, nameOfOpening } from "./names.ts";
import { planPath } from "./paths.ts";
import type { LineRef, PlanElement, PlanLine, PlanNode, Project } from "./schema.ts";
import { lowerEdgeUnderLine } from "./transform-things.ts";
import { unfollowEdge } from "./unfollow-edge.ts";

/** A line beside another, and the most that its curves miss the true distance by. */
export interface Offset {
  readonly elements: readonly PlanElement[];
  readonly missMm: number;
}

export type OffsetResult =
  | { readonly ok: true; readonly value: Offset }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** Curves of a parallel are drawn with so many nodes that they miss by less than this, if they can. */
const MISS_MM = 0.02;
const MOST_PARTS = 32;
/** Directions nearer than this go on smoothly. */
const SMOOTH_RAD = 1e-6;

/**
 * The parallel of a line in plan: outward of a closed outline where the distance is positive, toward the outboard
 * side of an open line (its left where it runs straight across). Lines and the arcs of radii are exact, corners stay
 * corners; curves get nodes of their own until they miss by less than 0.02 mm, and `missMm` says what is left. What
 * followed an edge gets nodes of its own; an edge on the centre line of a mirrored tray stays there. Problems: what is no line, and a distance that does not fit, at the node
 * where it does not.
 */
export function offsetLine(project: Project, line: LineRef, distanceMm: number): OffsetResult {
  const found = ownLine(project, line);
  if (!found) return { ok: false, problems: [] };
  const { planLine, name, place } = found;
  const refuse = (nodeId: string): OffsetResult => ({
    ok: false,
    problems: [{ kind: "parallel-does-not-fit", name, place: { ...place, nodeId }, distanceMm }],
  });
  const nodes = planLine.elements.filter((element) => element.kind === "node");
  const first = nodes[0];
  if (!first || nodes.length < planLine.elements.length || !Number.isFinite(distanceMm))
    return { ok: false, problems: [] };
  const courses = coursesOf(planLine, nodes);
  if (!courses) return refuse(first.id);
  if (distanceMm === 0) return { ok: true, value: { elements: planLine.elements, missMm: 0 } };
  const offMm = distanceMm * sideOf(planLine, courses);
  const isCentre = (course: Course) => project.symmetry === "mirrored" && liesOnCentre(course);
  const offs = courses.map((course): number => (isCentre(course) ? 0 : offMm));
  const corners = nodes.map((_, index) => cornerAt(courses, index, planLine.closed, offs));
  const bad = corners.indexOf(undefined);
  if (bad >= 0) return refuse(nodes[bad]?.id ?? first.id);
  const sound = corners.filter((corner) => corner !== undefined);
  const unfit = courses.findIndex((course, index) => !fits(course, index, sound, at(offs, index)));
  if (unfit >= 0) return refuse(nodes[unfit]?.id ?? first.id);
  for (let parts = 1; ; parts *= 2) {
    const elements = nodesBeside(nodes, courses, sound, { offMm, parts });
    const compiled = compilePath(planPath({ ...planLine, elements }, () => []));
    if (!compiled.ok) return refuse(ownNodeOf(nodes, nodeOfProblem(compiled.problems[0]) ?? first.id));
    const missMm = missOf(compiled.value.pieces, courses, Math.abs(distanceMm));
    if (missMm > MISS_MM && parts < MOST_PARTS) continue;
    const crossing = findSelfCrossings(compiled.value)[0];
    if (crossing) return refuse(ownNodeOf(nodes, crossing.edgeIds[0] ?? first.id));
    return { ok: true, value: { elements, missMm } };
  }
}

/** The document with a line moved to its parallel; the same document where that does not fit. */
export function offsetInPlace(project: Project, line: LineRef, distanceMm: number): Project {
  const result = offsetLine(project, line, distanceMm);
  if (!result.ok || distanceMm === 0) return project;
  const { elements } = result.value;
  if (line.of === "opening")
    return editOpening(project, line.openingId, (opening) => ({
      ...opening,
      outline: { ...opening.outline, elements },
    }));
  if (line.of !== "item") return project;
  const moved = editItem(project, line.itemId, (item) => {
    const beside = withPlanLine(item, { ...planLineOf(item), elements });
    return beside.kind === "fence" && item.kind === "fence"
      ? { ...beside, lowerEdge: lowerEdgeUnderLine(beside, item) }
      : beside;
  });
  return moveReferences(project, moved, line.itemId);
}

function ownLine(project: Project, line: LineRef) {
  if (line.of === "opening") {
    const opening = project.openings.find(({ id }) => id === line.openingId);
    return (
      opening && {
        planLine: opening.outline,
        name: nameOfOpening(opening),
        place: { openingId: opening.id },
      }
    );
  }
  const item = line.of === "item" ? project.items.find(({ id }) => id === line.itemId) : undefined;
  if (!item || item.kind === "transition") return undefined;
  const freed = planLineOf(item).elements.reduce(
    (done, element) => (element.kind === "follow" ? unfollowEdge(done, item.id, element.id) : done),
    project,
  );
  const alone = freed.items.find(({ id }) => id === item.id) ?? item;
  return { planLine: planLineOf(alone), name: nameOfItem(item), place: { itemId: item.id } };
}

/** The segment that leaves a node, before radii are put in. */
type Course = Extract<CurvePiece, { kind: "line" | "cubic" }>;

/** One course for each node that a segment leaves; undefined where the line does not compile. */
function coursesOf(planLine: PlanLine, nodes: readonly PlanNode[]): readonly Course[] | undefined {
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
function sideOf(planLine: PlanLine, courses: readonly Course[]): 1 | -1 {
  if (planLine.closed)
    return enclosedAreaMm2(courses.map((piece) => ({ piece, reversed: false }))) > 0 ? -1 : 1;
  const along = subtract2(endOfPiece(at(courses, -1)), pointOnPiece(at(courses, 0), 0));
  return along[0] < 0 ? -1 : 1;
}

/** An edge on the centre line joins its own image: it stays there. */
const liesOnCentre = (course: Course): boolean =>
  course.kind === "line" &&
  Math.abs(course.from[1]) <= ON_CENTRE_LINE_MM &&
  Math.abs(course.to[1]) <= ON_CENTRE_LINE_MM;

const directionAt = (course: Course, t: number): Vec2 => frameOnPiece(course, t).tangent;
const besideAt = (course: Course, t: number, offMm: number): Vec2 =>
  add2(pointOnPiece(course, t), scale2(leftOf2(directionAt(course, t)), offMm));

/** What becomes of a node: the points that take its place, and where the courses beside it end and begin. */
interface Corner {
  readonly points: readonly Vec2[];
  readonly endsAt: number;
  readonly beginsAt: number;
}

function cornerAt(
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
function fits(course: Course, index: number, corners: readonly Corner[], offMm: number): boolean {
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

function nodesBeside(
  nodes: readonly PlanNode[],
  courses: readonly Course[],
  corners: readonly Corner[],
  { offMm, parts }: { readonly offMm: number; readonly parts: number },
): readonly PlanNode[] {
  const taken = new Set(nodes.map(({ id }) => id));
  let count = 0;
  const freshId = () => {
    for (;;) {
      count++;
      if (!taken.has(`r${count}`)) return `r${count}`;
    }
  };
  return nodes.flatMap((node, index): readonly PlanNode[] => {
    const corner = at(corners, index);
    const before = courses.at(index - 1);
    const arrives = index === 0 && courses.length < nodes.length ? undefined : before;
    const after = courses[index];
    const last = corner.points.length - 1;
    // The node's own id stays where its outgoing segment begins, so that names and references stay with it.
    const placed = corner.points.map((point, step): PlanNode => {
      const isOwn = step === last;
      const isFirst = step === 0;
      const { knotSpacingMm, radiusMm, tangentInRad, tangentOutRad, ...rest } = node;
      const { edgeName, ...unnamed } = rest;
      const isRounded = last === 0 && arrives?.kind === "line" && after?.kind === "line";
      return {
        ...(isOwn ? rest : unnamed),
        id: isOwn ? node.id : freshId(),
        x: point[0],
        y: point[1],
        next: isOwn ? node.next : "line",
        ...(isRounded ? radiusBeside(radiusMm, arrives, after, offMm) : {}),
        ...(isFirst && arrives?.kind === "cubic" && needsAngles(corner, arrives, after)
          ? { meets: "corner", tangentInRad: angleOf(directionAt(arrives, corner.endsAt)) }
          : {}),
        ...(isOwn && after?.kind === "cubic" && needsAngles(corner, arrives, after)
          ? { meets: "corner", tangentOutRad: angleOf(directionAt(after, corner.beginsAt)) }
          : {}),
      };
    });
    if (after?.kind !== "cubic") return placed;
    const endsAt = at(corners, (index + 1) % corners.length).endsAt;
    const between = Array.from({ length: parts - 1 }, (_, step): PlanNode => {
      const t = corner.beginsAt + ((endsAt - corner.beginsAt) * (step + 1)) / parts;
      const [x, y] = besideAt(after, t, offMm);
      return { kind: "node", id: freshId(), x, y, next: "curve" };
    });
    return [...placed, ...between];
  });
}

/** A curve's end keeps its typed direction wherever the curve does not go on smoothly into the next. */
function needsAngles(corner: Corner, arrives: Course | undefined, after: Course | undefined): boolean {
  if (!arrives || !after || corner.points.length > 1) return true;
  return Math.abs(cross2(directionAt(arrives, 1), directionAt(after, 0))) >= SMOOTH_RAD;
}

const angleOf = ([x, y]: Vec2): number => Math.atan2(y, x);

/** The radius grows on the outside of its bend and shrinks on the inside, down to a sharp corner. */
function radiusBeside(
  radiusMm: number | undefined,
  before: Course,
  after: Course,
  offMm: number,
): { readonly radiusMm?: number } {
  if (radiusMm === undefined) return {};
  const turn = Math.sign(cross2(directionAt(before, 1), directionAt(after, 0)));
  const besideMm = radiusMm - turn * offMm;
  return besideMm > COINCIDENT_POINTS_MM ? { radiusMm: besideMm } : {};
}

/** The most that the new curves are nearer to, or farther from, the old line than they should be. */
function missOf(pieces: readonly CurvePiece[], courses: readonly Course[], distanceMm: number): number {
  const curves = courses.filter((course) => course.kind === "cubic");
  if (curves.length === 0) return 0;
  const misses = pieces.flatMap((piece) =>
    piece.kind === "cubic"
      ? [0.125, 0.375, 0.5, 0.625, 0.875].map((t) => {
          const point = pointOnPiece(piece, t);
          const nearest = Math.min(...curves.map((curve) => nearestOnPiece(curve, point).distanceMm));
          return Math.abs(nearest - distanceMm);
        })
      : [],
  );
  return Math.max(0, ...misses);
}

const nodeOfProblem = (problem: PathProblem | undefined): string | undefined =>
  problem !== undefined && "nodeId" in problem ? problem.nodeId : undefined;

/** The node of the line that a node beside it came from. */
const ownNodeOf = (nodes: readonly PlanNode[], id: string): string =>
  nodes.find((node) => node.id === id)?.id ?? nodes[0]?.id ?? id;
