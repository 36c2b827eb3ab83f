import {
  type Curve,
  type CurvePiece,
  compilePath,
  mirrorPiece,
  reversePiece,
  subCurve,
} from "../curves/index.ts";
import type { Problem } from "../foundation/index.ts";
import { checkItems, type ItemFaults } from "./check-items.ts";
import type { LineOwner } from "./check-line.ts";
import { planLineOf } from "./edit-lines.ts";
import { fromPathProblem } from "./from-path-problem.ts";
import { nameOfItem } from "./names.ts";
import { followEndNode, followStartNode, planPath } from "./paths.ts";
import type { EdgeRef, FollowPiece, Item, Project } from "./schema.ts";

/** The line in plan of one item, compiled in the direction it was drawn. */
export interface DrawnLine {
  /** Absent where the line cannot be compiled. */
  readonly curve?: Curve;
  /** For each following piece, by id: the pieces it runs along, in this line's direction. */
  readonly stretches: Readonly<Record<string, readonly CurvePiece[]>>;
  /** For each following piece, by id: the edges of the other line that it runs along. */
  readonly followed: Readonly<Record<string, readonly string[]>>;
  readonly problems: readonly Problem[];
}

/**
 * The lines in plan of all items as drawn, by item id, in the order of the document; what is followed is
 * compiled before what follows it. Problems: unknown references, cycles of references, and all that keeps a
 * path from being a curve. Lines that `faults` names as unfit are absent without a further problem.
 */
export function compileItems(
  project: Project,
  faults: ItemFaults = checkItems(project),
): ReadonlyMap<string, DrawnLine> {
  const items = new Map<string, Item>();
  project.items.forEach((item, index) => {
    if (!faults.repeatedItems.has(index)) items.set(item.id, item);
  });
  const done = new Map<string, DrawnLine>();
  const cycles = cyclesOf(items);
  const lineOf = (item: Item): DrawnLine => {
    const known = done.get(item.id);
    if (known) return known;
    const cycle = cycles.get(item.id);
    const line = cycle
      ? withoutCurve([{ ...ownerOf(item), kind: "reference-cycle", itemIds: cycle }])
      : faults.unfitPlanIds.has(item.id)
        ? withoutCurve([])
        : compileItem(item, project, items, lineOf);
    done.set(item.id, line);
    return line;
  };
  return new Map([...items.values()].map((item) => [item.id, lineOf(item)]));
}

const withoutCurve = (problems: readonly Problem[]): DrawnLine => ({ stretches: {}, followed: {}, problems });

const ownerOf = (item: Item): LineOwner => ({ name: nameOfItem(item), place: { itemId: item.id } });

function compileItem(
  item: Item,
  project: Project,
  items: ReadonlyMap<string, Item>,
  lineOf: (item: Item) => DrawnLine,
): DrawnLine {
  const problems: Problem[] = [];
  const stretches: Record<string, readonly CurvePiece[]> = {};
  const followed: Record<string, readonly string[]> = {};
  for (const element of planLineOf(item).elements) {
    if (element.kind === "node") continue;
    const found = findStretch(element, ownerOf(item), project, items, lineOf);
    if ("problem" in found) problems.push(found.problem);
    else {
      stretches[element.id] = stretchPieces(found.pieces, element);
      followed[element.id] = [...new Set(found.pieces.map((piece) => piece.edgeId))];
    }
  }
  if (problems.length > 0) return { stretches, followed, problems };
  const compiled = compilePath(planPath(planLineOf(item), (follow) => stretches[follow.id] ?? []));
  if (compiled.ok) return { curve: compiled.value, stretches, followed, problems };
  return {
    stretches,
    followed,
    problems: compiled.problems.map((problem) => fromPathProblem(problem, ownerOf(item), "xy")),
  };
}

/** The pieces of the other line that an edge reference means, in that line's direction. */
function findStretch(
  follow: FollowPiece,
  owner: LineOwner,
  project: Project,
  items: ReadonlyMap<string, Item>,
  lineOf: (item: Item) => DrawnLine,
): { readonly pieces: readonly CurvePiece[] } | { readonly problem: Problem } {
  const { edge } = follow;
  const here = { name: owner.name, place: { ...owner.place, nodeId: follow.id } };
  const missing = (missingId: string) => ({
    problem: { ...here, kind: "unknown-reference", field: "edge", missingId } as const,
  });
  const other = items.get(edge.itemId);
  if (!other) return missing(edge.itemId);
  if (edge.hand === "left" && project.symmetry === "none") return missing(`${nameOfItem(other)} on the left`);
  const curve = lineOf(other).curve;
  if (!curve) return { problem: { ...here, kind: "followed-line-missing", otherName: nameOfItem(other) } };
  const pieces = subCurve(curve, edge.fromNodeId, edge.toNodeId);
  if (pieces) return { pieces };
  return missing(missingEnd(edge, curve));
}

/** The end that a curve does not have; both in their order where it has both, but runs the other way. */
function missingEnd(edge: EdgeRef, curve: Curve): string {
  const isOn = (nodeId: string) =>
    curve.pieces.some((piece) => piece.startNodeId === nodeId || piece.endNodeId === nodeId);
  if (!isOn(edge.fromNodeId)) return edge.fromNodeId;
  if (!isOn(edge.toNodeId)) return edge.toNodeId;
  return `${edge.fromNodeId} to ${edge.toNodeId}`;
}

/** The pieces in the following line's own hand and direction, as one edge of it with two end nodes. */
function stretchPieces(pieces: readonly CurvePiece[], follow: FollowPiece): readonly CurvePiece[] {
  const onHand = follow.edge.hand === "left" ? pieces.map(mirrorPiece) : pieces;
  const inOrder = follow.direction === "along" ? onHand : [...onHand].reverse().map(reversePiece);
  return inOrder.map((piece, index) => {
    const { startNodeId: _start, endNodeId: _end, ...rest } = piece;
    return {
      ...rest,
      edgeId: follow.id,
      ...(index === 0 ? { startNodeId: followStartNode(follow.id) } : {}),
      ...(index === inOrder.length - 1 ? { endNodeId: followEndNode(follow.id) } : {}),
    };
  });
}

/** For each item whose line follows itself in the end: the ids round the cycle, beginning with it. */
function cyclesOf(items: ReadonlyMap<string, Item>): ReadonlyMap<string, readonly string[]> {
  const cycles = new Map<string, readonly string[]>();
  const state = new Map<string, "open" | "done">();
  const trail: string[] = [];
  const visit = (id: string): void => {
    const item = items.get(id);
    if (!item || state.get(id) === "done") return;
    if (state.get(id) === "open") {
      const cycle = trail.slice(trail.indexOf(id));
      cycle.forEach((member, i) => {
        if (!cycles.has(member)) cycles.set(member, [...cycle.slice(i), ...cycle.slice(0, i), member]);
      });
      return;
    }
    state.set(id, "open");
    trail.push(id);
    for (const element of planLineOf(item).elements)
      if (element.kind === "follow") visit(element.edge.itemId);
    trail.pop();
    state.set(id, "done");
  };
  for (const id of items.keys()) visit(id);
  return cycles;
}
