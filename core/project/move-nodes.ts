import { distance2, ROUNDING_RELATIVE, type Vec2 } from "../foundation/index.ts";
import type { LineRef, NodeMove } from "./command-types.ts";
import { editLine, planLineOf } from "./edit-lines.ts";
import type { PlanNode, Project, SideNode, SpaceNode } from "./schema.ts";

/**
 * The document with nodes moved, all at once: `to` is (x, y) in plan, (x, z) in the side view, (along, depth) on a
 * fence's depths. Stored knot spacings of the segments beside them grow with their chords, so that a curve that
 * was split keeps its character; between nodes that move alike they stay.
 */
export function moveNodes(project: Project, moves: readonly NodeMove[]): Project {
  return byLine(moves).reduce((moved, { line, places }) => moveOnLine(moved, line, places), project);
}

type Places = ReadonlyMap<string, Vec2>;

function byLine(moves: readonly NodeMove[]): readonly { readonly line: LineRef; readonly places: Places }[] {
  const groups = new Map<string, { readonly line: LineRef; readonly places: Map<string, Vec2> }>();
  for (const { line, nodeId, to } of moves) {
    const key = JSON.stringify(Object.entries(line).toSorted());
    const group = groups.get(key) ?? { line, places: new Map<string, Vec2>() };
    group.places.set(nodeId, to);
    groups.set(key, group);
  }
  return [...groups.values()];
}

function moveOnLine(project: Project, line: LineRef, places: Places): Project {
  const isClosed = isClosedLine(project, line);
  const ofView =
    line.of === "edge" && line.view === "side"
      ? { place: placeInSide, move: moveHeight }
      : { place: placeOverPlan, move: moveOverPlan };
  return editLine(project, line, {
    plan: (elements) => moveInList(elements, places, { isClosed, place: placeInPlan, move: moveInPlan }),
    side: (nodes) => moveInList(nodes, places, { isClosed: false, place: placeInSide, move: moveInSide }),
    space: (nodes) => moveInList(nodes, places, { isClosed: false, ...ofView }),
    depths: (nodes) =>
      nodes.some(({ id }) => places.has(id))
        ? nodes.map((node) => {
            const to = places.get(node.id);
            return to ? { ...node, alongMm: to[0], depthMm: to[1] } : node;
          })
        : nodes,
  });
}

interface NodeKind<T> {
  readonly isClosed: boolean;
  /** Where a node lies; undefined for a piece that follows an edge. */
  readonly place: (element: T) => Vec2 | undefined;
  readonly move: (element: T, to: Vec2) => T;
}

function moveInList<T extends { readonly id: string }>(
  list: readonly T[],
  places: Places,
  kind: NodeKind<T>,
): readonly T[] {
  const goesTo = (element: T): Vec2 | undefined => {
    const from = kind.place(element);
    const to = places.get(element.id);
    return from && to && (from[0] !== to[0] || from[1] !== to[1]) ? to : undefined;
  };
  if (!list.some(goesTo)) return list;
  return list.map((element, index) => {
    const after = kind.isClosed ? list[(index + 1) % list.length] : list[index + 1];
    const to = goesTo(element);
    const [from, end] = [kind.place(element), after && kind.place(after)];
    const kept =
      from && end && after
        ? rescaled(element, distance2(from, end), distance2(to ?? from, goesTo(after) ?? end))
        : element;
    return to ? kind.move(kept, to) : kept;
  });
}

/** A node whose stored knot spacing is scaled as its chord. */
function rescaled<T extends { readonly id: string }>(node: T, oldChordMm: number, newChordMm: number): T {
  if (!("knotSpacingMm" in node) || typeof node.knotSpacingMm !== "number") return node;
  const isKept =
    Math.abs(oldChordMm - newChordMm) <= ROUNDING_RELATIVE * Math.max(oldChordMm, newChordMm) ||
    oldChordMm === 0 ||
    newChordMm === 0;
  return isKept ? node : { ...node, knotSpacingMm: (node.knotSpacingMm * newChordMm) / oldChordMm };
}

type PlanElementLike = PlanNode | { readonly kind: "follow"; readonly id: string };
const placeInPlan = (element: PlanElementLike): Vec2 | undefined =>
  element.kind === "node" ? [element.x, element.y] : undefined;
const moveInPlan = <T extends PlanElementLike>(element: T, to: Vec2): T =>
  element.kind === "node" ? { ...element, x: to[0], y: to[1] } : element;
const placeOverPlan = (node: SpaceNode): Vec2 => [node.x, node.y];
const moveOverPlan = (node: SpaceNode, to: Vec2): SpaceNode => ({ ...node, x: to[0], y: to[1] });
const moveHeight = (node: SpaceNode, to: Vec2): SpaceNode => ({ ...node, x: to[0], z: to[1] });
const placeInSide = (node: SideNode | SpaceNode): Vec2 => [node.x, node.z];
const moveInSide = (node: SideNode, to: Vec2): SideNode => ({ ...node, x: to[0], z: to[1] });

function isClosedLine(project: Project, line: LineRef): boolean {
  if (line.of === "opening")
    return project.openings.find(({ id }) => id === line.openingId)?.outline.closed ?? false;
  if (line.of !== "item") return false;
  const item = project.items.find((candidate) => candidate.id === line.itemId);
  return item !== undefined && planLineOf(item).closed;
}
