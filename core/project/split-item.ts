import { type Curve, enclosedAreaMm2, nodePlace, pieceLengthMm, pointOnPiece } from "../curves/index.ts";
import { compileItems } from "./compile-items.ts";
import { mapEdges } from "./delete-node.ts";
import { directionAtNode } from "./direction-at-node.ts";
import { planLineOf } from "./edit-lines.ts";
import { freshId } from "./fresh-id.ts";
import { followEndNode, followStartNode } from "./paths.ts";
import type { EdgeRef, Fence, Item, PlanElement, PlanNode, Project, Section } from "./schema.ts";
import { splitLine } from "./split-line.ts";
import { splitLowerEdge } from "./split-lower-edge.ts";
import { unfollowEdge } from "./unfollow-edge.ts";

/** What the second half is called. */
export interface NewHalf {
  readonly id: string;
  readonly number: number;
  readonly name: string;
}

/**
 * The document with a fence split at a node into two, or a section along the straight from one node of its outline to
 * another into two that share the cut as one edge: the second follows it. Both keep all else. What followed an edge of
 * the second half follows it there; what ran along both has nodes of its own. Curves keep their directions at the
 * cut. The very same document where that cannot be: no such node, an end, neighbours, or an id that is taken.
 */
export function splitItem(
  project: Project,
  itemId: string,
  nodeIds: readonly string[],
  half: NewHalf,
): Project {
  const item = project.items.find(({ id }) => id === itemId);
  if (!item || project.items.some(({ id }) => id === half.id)) return project;
  const [first, second] = nodeIds;
  if (item.kind === "fence" && first !== undefined && second === undefined)
    return splitFence(project, item, first, half);
  return item.kind === "section" && first !== undefined && second !== undefined
    ? splitSection(project, item, [first, second], half)
    : project;
}

/** Halves of a curved outline may differ from the whole by this share of its area. */
const SHARE_LOST = 1e-3;

/** Whether a split section's halves cover what the whole did: not where the straight cut runs outside it. */
export function coversWhole(before: Project, after: Project, itemId: string, halfId: string): boolean {
  const areaMm2 = (project: Project, id: string): number => {
    const curve = compileItems(project).get(id)?.curve;
    return Math.abs(enclosedAreaMm2((curve?.pieces ?? []).map((piece) => ({ piece, reversed: false }))));
  };
  const whole = areaMm2(before, itemId);
  const halves = areaMm2(after, itemId) + areaMm2(after, halfId);
  return Math.abs(halves - whole) <= SHARE_LOST * whole;
}

function splitFence(project: Project, fence: Fence, nodeId: string, half: NewHalf): Project {
  const { elements } = fence.line;
  const index = elements.findIndex(({ id, kind }) => id === nodeId && kind === "node");
  const node = elements[index];
  const curve = compileItems(project).get(fence.id)?.curve;
  if (node?.kind !== "node" || index === 0 || index === elements.length - 1 || !curve) return project;
  const place = nodePlace(curve, nodeId);
  if (!place) return project;
  const lowerEdges = splitLowerEdge(project, fence, node.x, lengthBefore(curve, nodeId));
  const front = [...elements.slice(0, index), endingAt(node, elements[index - 1], curve)];
  const rear = [beginningAt(node, curve), ...elements.slice(index + 1)];
  const first: Fence = { ...fence, line: { ...fence.line, elements: front }, lowerEdge: lowerEdges[0] };
  const cutMm = lengthBefore(curve, nodeId);
  const second: Fence = {
    ...fence,
    ...half,
    line: { ...fence.line, elements: rear },
    lowerEdge: lowerEdges[1],
    ...(fence.bends && { bends: fence.bends.map((bend) => ({ ...bend, atMm: bend.atMm - cutMm })) }),
  };
  const inRear = new Set(rear.flatMap(nodeIdsOf));
  const inFront = new Set(front.flatMap(nodeIdsOf));
  return withHalves(project, first, second, (edge) => {
    if (inFront.has(edge.fromNodeId) && inFront.has(edge.toNodeId)) return edge;
    return inRear.has(edge.fromNodeId) && inRear.has(edge.toNodeId)
      ? { ...edge, itemId: half.id }
      : undefined;
  });
}

/** A curve that comes out of a followed cut would take up the cut's direction: this much of it is straight instead. */
const STRAIGHT_AT_CUT_MM = 1;

function splitSection(
  project: Project,
  whole: Section,
  ends: readonly [string, string],
  half: NewHalf,
): Project {
  const prepared = withNodesAtCut(project, whole, ends);
  const section = prepared.section;
  const { elements, closed } = section.outline;
  const at = ends.map((end) => elements.findIndex(({ id, kind }) => id === end && kind === "node"));
  const [from, to] = [Math.min(...at), Math.max(...at)];
  const [a, b] = [elements[from], elements[to]];
  const curve = compileItems(prepared.project).get(section.id)?.curve;
  const isEdge = to - from < 2 || from + elements.length - to < 2;
  if (!closed || !curve || a?.kind !== "node" || b?.kind !== "node" || from === to || isEdge) return project;
  const kept: readonly PlanElement[] = [
    beginningAt(a, curve),
    ...elements.slice(from + 1, to),
    endingAt(b, elements[to - 1], curve),
  ];
  const shared = freshId("shared", elements);
  const cut: PlanElement = {
    kind: "follow",
    id: shared,
    edge: { itemId: section.id, fromNodeId: b.id, toNodeId: a.id, hand: "right" },
    direction: "against",
    next: prepared.isHeld(elements[to + 1]) ? "line" : b.next,
  };
  const taken = [cut, ...elements.slice(to + 1), ...elements.slice(0, from)].map((element): PlanElement => {
    if (element.kind !== "node" || !prepared.isHeld(element)) return element;
    const { knotSpacingMm: _spacing, ...node } = element;
    return element === elements[to + 1]
      ? {
          ...element,
          meets: "corner",
          ...tangent("tangentOutRad", directionAtNode(curve, element.id, "out")),
        }
      : {
          ...node,
          next: "line",
          meets: "corner",
          ...tangent("tangentInRad", directionAtNode(curve, element.id, "in")),
        };
  });
  const pivot = pivotOf(section, curve);
  const first: Section = { ...section, ...pivot, outline: { ...section.outline, elements: kept } };
  const second: Section = {
    ...section,
    ...half,
    ...pivot,
    outline: { ...section.outline, elements: taken },
  };
  const inFirst = new Set(kept.flatMap(nodeIdsOf));
  const inSecond = new Set(taken.flatMap(nodeIdsOf));
  const led = new Map([
    [a.id, followStartNode(shared)],
    [b.id, followEndNode(shared)],
  ]);
  const place = new Map(kept.map(({ id }, index) => [id, index]));
  return withHalves(project, first, second, (edge) => {
    const [fromPlace, toPlace] = [place.get(edge.fromNodeId), place.get(edge.toNodeId)];
    const isForward = fromPlace !== undefined && toPlace !== undefined && fromPlace < toPlace;
    if (isForward || (inFirst.has(edge.fromNodeId) && inFirst.has(edge.toNodeId) && !isCut(edge, a, b)))
      return edge;
    const [start, end] = [
      led.get(edge.fromNodeId) ?? edge.fromNodeId,
      led.get(edge.toNodeId) ?? edge.toNodeId,
    ];
    const isTaken = [start, end].every(
      (id) => inSecond.has(id) || id === followStartNode(shared) || id === followEndNode(shared),
    );
    return isTaken ? { ...edge, itemId: half.id, fromNodeId: start, toNodeId: end } : undefined;
  });
}

const tangent = (field: "tangentInRad" | "tangentOutRad", angleRad: number | undefined) =>
  angleRad === undefined ? {} : { [field]: angleRad };

/** The section with a node on each curve of the second half that touches the cut, close to it. */
function withNodesAtCut(project: Project, section: Section, ends: readonly [string, string]) {
  const { elements } = section.outline;
  const places = ends.map((end) => elements.findIndex(({ id }) => id === end));
  const [from, to] = [Math.min(...places), Math.max(...places)];
  const beforeA = elements[(from - 1 + elements.length) % elements.length];
  const curve = compileItems(project).get(section.id)?.curve;
  const shareOf = (edgeId: string): number => {
    const piece = curve?.pieces.find((one) => one.edgeId === edgeId && one.kind === "cubic");
    return piece ? Math.min(0.1, STRAIGHT_AT_CUT_MM / Math.max(pieceLengthMm(piece), 1)) : 0;
  };
  const held: string[] = [];
  let done = project;
  const hold = (edgeId: string | undefined, t: (share: number) => number) => {
    const share = edgeId === undefined ? 0 : shareOf(edgeId);
    if (edgeId === undefined || share === 0) return;
    const newNodeId = freshId("cut", [...elements, ...held.map((id) => ({ id }))]);
    const line = { of: "item", itemId: section.id } as const;
    const next = splitLine(done, line, { afterNodeId: edgeId, t: t(share), newNodeId });
    if (next !== done) held.push(newNodeId);
    done = next;
  };
  hold(elements[to]?.id, (share) => share);
  hold(beforeA?.id, (share) => 1 - share);
  const found = done.items.find(({ id }) => id === section.id);
  return {
    project: done,
    section: found?.kind === "section" ? found : section,
    isHeld: (element: PlanElement | undefined): boolean => element !== undefined && held.includes(element.id),
  };
}

/** The edge ran from the cut's end round to its start: over all of the second half. */
const isCut = (edge: EdgeRef, a: PlanNode, b: PlanNode): boolean =>
  edge.fromNodeId === b.id && edge.toNodeId === a.id;

/** A sheet that leans keeps the line that it leans about, though its outline is another now. */
function pivotOf(section: Section, curve: Curve): { readonly pivotYMm?: number } {
  if (section.pivotYMm !== undefined || (section.headingRad === 0 && section.tiltRad === 0)) return {};
  const ys = curve.pieces.flatMap((piece) => [0, 0.25, 0.5, 0.75, 1].map((t) => pointOnPiece(piece, t)[1]));
  return { pivotYMm: ys.reduce((nearest, y) => (Math.abs(y) < Math.abs(nearest) ? y : nearest)) };
}

/** Both halves in the place of the whole; references are led on, and those that cannot be get nodes of their own. */
function withHalves(
  project: Project,
  first: Item,
  second: Item,
  lead: (edge: EdgeRef) => EdgeRef | undefined,
): Project {
  const own = (edge: EdgeRef) => edge.itemId === first.id;
  const freed = project.items.reduce(
    (done, item) =>
      item.id === first.id
        ? done
        : planLineOf(item).elements.reduce(
            (kept, element) =>
              element.kind === "follow" && own(element.edge) && lead(element.edge) === undefined
                ? unfollowEdge(kept, item.id, element.id)
                : kept,
            done,
          ),
    project,
  );
  const items = freed.items.flatMap((item) =>
    item.id === first.id
      ? [first, second]
      : [mapEdges(item, (edge) => (own(edge) ? (lead(edge) ?? edge) : edge))],
  );
  return { ...freed, items };
}

const nodeIdsOf = (element: PlanElement): readonly string[] =>
  element.kind === "node" ? [element.id] : [followStartNode(element.id), followEndNode(element.id)];

/** The node as the end of an open run: no arc, and a curve arrives as it did. */
function endingAt(node: PlanNode, before: PlanElement | undefined, curve: Curve): PlanNode {
  const { radiusMm: _radius, knotSpacingMm: _spacing, tangentOutRad: _out, edgeName: _name, ...rest } = node;
  const isCurve = before?.next === "curve";
  const direction = isCurve ? directionAtNode(curve, node.id, "in") : undefined;
  return {
    ...rest,
    next: "line",
    ...(direction === undefined ? {} : { meets: "corner", tangentInRad: direction }),
  };
}

/** The node as the start of an open run. */
function beginningAt(node: PlanNode, curve: Curve): PlanNode {
  const { radiusMm: _radius, tangentInRad: _in, ...rest } = node;
  const direction = node.next === "curve" ? directionAtNode(curve, node.id, "out") : undefined;
  return direction === undefined ? rest : { ...rest, meets: "corner", tangentOutRad: direction };
}

function lengthBefore(curve: Curve, nodeId: string): number {
  const index = curve.pieces.findIndex(({ startNodeId }) => startNodeId === nodeId);
  return curve.startsMm[index] ?? curve.lengthMm;
}
