import {
  type CurvePiece,
  compilePath,
  findSelfCrossings,
  nearestOnPiece,
  type PathProblem,
  pointOnPiece,
} from "../curves/index.ts";
import { at, type Problem } from "../foundation/index.ts";
import { moveReferences } from "./delete-node.ts";
import { editItem, editOpening, planLineOf, withPlanLine } from "./edit-lines.ts";
import { type Course, coursesOf, liesOnCentre, sideOf } from "./line-courses.ts";
import { nameOfItem, nameOfOpening } from "./names.ts";
import { nodesBeside } from "./nodes-beside.ts";
import { cornerAt, fits } from "./offset-corners.ts";
import { planPath } from "./paths.ts";
import type { LineRef, PlanElement, PlanNode, Project } from "./schema.ts";
import { lowerEdgeUnderLine } from "./transform-lower-edge.ts";
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
