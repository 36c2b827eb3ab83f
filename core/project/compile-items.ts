import { type CurvePiece, compilePath, mirrorPiece, reversePiece } from "../curves/index.ts";
import { type Memory, NO_MEMORY, type Problem } from "../foundation/index.ts";
import { checkItems, type ItemFaults } from "./check-items.ts";
import type { LineOwner } from "./check-line.ts";
import { compileTransition } from "./compile-transition.ts";
import { planLineOf } from "./edit-lines.ts";
import { type DrawnLine, findStretch, type Surroundings } from "./find-stretch.ts";
import { fromPathProblem } from "./from-path-problem.ts";
import { nameOfItem, nameOfOpening } from "./names.ts";
import { followEndNode, followStartNode, planPath } from "./paths.ts";
import type { FollowPiece, Item, Opening, PlanLine, Project } from "./schema.ts";

/** Openings stand among the items under this key. */
export const openingKey = (openingId: string): string => `opening/${openingId}`;

/**
 * The lines in plan of all items as drawn, by item id, in the order of the document, and of all openings by
 * `openingKey`; what is followed is compiled before what follows it. A transition's line is its outline in plan. Problems: unknown references, cycles of references, and all that keeps a
 * path from being a curve. Lines that `faults` names as unfit are absent without a further problem. With a memory, a line
 * is compiled again only where it has changed, or what it follows.
 */
export function compileItems(
  project: Project,
  faults: ItemFaults = checkItems(project),
  memory: Memory = NO_MEMORY,
): ReadonlyMap<string, DrawnLine> {
  const items = new Map<string, Item>();
  project.items.forEach((item, index) => {
    if (!faults.repeatedItems.has(index)) items.set(item.id, item);
  });
  const done = new Map<string, DrawnLine>();
  const cycles = cyclesOf(items);
  const lineFrom = (drawn: Item | Opening, planLine: PlanLine, owner: LineOwner): DrawnLine => {
    const followed = followedIn(planLine, items).flatMap((other) => [other, lineOf(other)]);
    return memory.recall(
      `line ${Object.values(owner.place).join()}`,
      [drawn, project.symmetry, ...followed],
      () => compileLine(planLine, owner, around),
    );
  };
  const lineOf = (item: Item): DrawnLine => {
    const known = done.get(item.id);
    if (known) return known;
    const cycle = cycles.get(item.id);
    const line = cycle
      ? withoutCurve([{ ...ownerOf(item), kind: "reference-cycle", itemIds: cycle }])
      : faults.unfitPlanIds.has(item.id)
        ? withoutCurve([])
        : item.kind === "transition"
          ? compileTransition(item, around)
          : lineFrom(item, planLineOf(item), ownerOf(item));
    done.set(item.id, line);
    return line;
  };
  const around: Surroundings = { project, items, lineOf };
  const lines = new Map([...items.values()].map((item) => [item.id, lineOf(item)]));
  project.openings.forEach((opening, index) => {
    if (faults.repeatedOpenings.has(index) || faults.unfitOpeningIds.has(opening.id)) return;
    const owner = { name: nameOfOpening(opening), place: { openingId: opening.id } };
    lines.set(openingKey(opening.id), lineFrom(opening, opening.outline, owner));
  });
  return lines;
}

/** The items that pieces of a line follow. */
const followedIn = ({ elements }: PlanLine, items: ReadonlyMap<string, Item>): readonly Item[] =>
  elements.flatMap((element) => {
    const other = element.kind === "follow" ? items.get(element.edge.itemId) : undefined;
    return other ? [other] : [];
  });

const withoutCurve = (problems: readonly Problem[]): DrawnLine => ({ stretches: {}, followed: {}, problems });

const ownerOf = (item: Item): LineOwner => ({ name: nameOfItem(item), place: { itemId: item.id } });

function compileLine(planLine: PlanLine, owner: LineOwner, around: Surroundings): DrawnLine {
  const problems: Problem[] = [];
  const stretches: Record<string, readonly CurvePiece[]> = {};
  const followed: Record<string, readonly string[]> = {};
  for (const element of planLine.elements) {
    if (element.kind === "node") continue;
    const found = findStretch(element.edge, placedAt(owner, element.id), around);
    if ("problem" in found) problems.push(found.problem);
    else {
      stretches[element.id] = stretchPieces(found.pieces, element);
      followed[element.id] = [...new Set(found.pieces.map((piece) => piece.edgeId))];
    }
  }
  if (problems.length > 0) return { stretches, followed, problems };
  const compiled = compilePath(planPath(planLine, (follow) => stretches[follow.id] ?? []));
  if (compiled.ok) return { curve: compiled.value, stretches, followed, problems };
  return {
    stretches,
    followed,
    problems: compiled.problems.map((problem) => fromPathProblem(problem, owner, "xy")),
  };
}

const placedAt = (owner: LineOwner, nodeId: string): LineOwner => ({
  name: owner.name,
  place: { ...owner.place, nodeId },
});

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
    if (item.kind === "transition")
      for (const edge of [item.first, item.second]) if (edge.kind === "stretch") visit(edge.edge.itemId);
    trail.pop();
    state.set(id, "done");
  };
  for (const id of items.keys()) visit(id);
  return cycles;
}
