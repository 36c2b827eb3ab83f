import { distance2, type Vec2 } from "../foundation/index.ts";
import type { LineRef } from "./command-types.ts";
import { editLine, planLineOf, replaceOne } from "./edit-lines.ts";
import type { PlanNode, Project, SideNode, SpaceNode } from "./schema.ts";

/**
 * The document with one node moved: `to` is (x, y) in plan, (x, z) in the side view, (along, depth) on a
 * fence's depths. Stored knot spacings of the segments beside it grow with their chords, so that a curve that
 * was split keeps its character.
 */
export function moveNode(project: Project, line: LineRef, nodeId: string, to: Vec2): Project {
  const isClosed = isClosedLine(project, line);
  const ofView =
    line.of === "edge" && line.view === "side"
      ? { place: placeInSide, move: moveHeight }
      : { place: placeOverPlan, move: moveOverPlan };
  return editLine(project, line, {
    plan: (elements) => moveInList(elements, nodeId, to, { isClosed, place: placeInPlan, move: moveInPlan }),
    side: (nodes) => moveInList(nodes, nodeId, to, { isClosed: false, place: placeInSide, move: moveInSide }),
    space: (nodes) => moveInList(nodes, nodeId, to, { isClosed: false, ...ofView }),
    depths: (nodes) =>
      replaceOne(
        nodes,
        (node) => node.id === nodeId,
        (node) => ({ ...node, alongMm: to[0], depthMm: to[1] }),
      ),
  });
}

interface NodeFields {
  readonly id: string;
  readonly knotSpacingMm?: number;
}

interface NodeKind<T> {
  readonly isClosed: boolean;
  /** Where a node lies; undefined for a piece that follows an edge. */
  readonly place: (element: T) => Vec2 | undefined;
  readonly move: (element: T, to: Vec2) => T;
}

function moveInList<T extends NodeFields | { readonly id: string }>(
  list: readonly T[],
  nodeId: string,
  to: Vec2,
  kind: NodeKind<T>,
): readonly T[] {
  const index = list.findIndex((element) => element.id === nodeId && kind.place(element) !== undefined);
  const node = list[index];
  const from = node && kind.place(node);
  if (node === undefined || from === undefined || (from[0] === to[0] && from[1] === to[1])) return list;
  const beside = (step: number) =>
    kind.isClosed ? list.at((index + step) % list.length) : list[index + step];
  const before = beside(-1);
  const after = beside(1);
  return list.map((element) => {
    if (element === node) return kind.move(rescaled(node, from, to, after && kind.place(after)), to);
    if (element === before) return rescaled(before, from, to, kind.place(before));
    return element;
  });
}

/** A node whose stored knot spacing is scaled by the new over the old chord to a point that stays. */
function rescaled<T extends NodeFields | { readonly id: string }>(
  node: T,
  from: Vec2,
  to: Vec2,
  staying: Vec2 | undefined,
): T {
  if (staying === undefined || !("knotSpacingMm" in node) || node.knotSpacingMm === undefined) return node;
  const oldChord = distance2(from, staying);
  const newChord = distance2(to, staying);
  if (oldChord === 0 || newChord === 0) return node;
  return { ...node, knotSpacingMm: (node.knotSpacingMm * newChord) / oldChord };
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
