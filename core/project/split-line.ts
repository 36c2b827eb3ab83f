import {
  compileSpacePath,
  type Path,
  type PathNode,
  pointOnSpaceCubic,
  splitSegment as splitPath,
} from "../curves/index.ts";
import { distanceSpace } from "../foundation/index.ts";
import type { LineRef } from "./command-types.ts";
import { compileItems, openingKey } from "./compile-items.ts";
import { editLine, planLineOf } from "./edit-lines.ts";
import { edgeAfterFollow, planPath, sidePath } from "./paths.ts";
import type { Fence, PlanElement, PlanLine, Project, SideNode, SpaceNode } from "./schema.ts";

/** Where to put the new node: in the segment that leaves an element, at t from 0 to 1 along it. */
export interface Split {
  readonly afterNodeId: string;
  readonly t: number;
  readonly newNodeId: string;
}

/**
 * The document with a node put into a segment so that the line keeps its shape: the two halves of a curve store
 * their knot spacing. Where that cannot be (no such segment, an id that is taken), the same document.
 */
export function splitLine(project: Project, line: LineRef, split: Split): Project {
  return editLine(project, line, {
    plan: (elements) => splitPlan(project, line, elements, split),
    side: (nodes) => splitSide(nodes, split),
    depths: (nodes) => splitDepths(nodes, split),
    space: (nodes) => splitSpace(nodes, split),
  });
}

function splitPlan(
  project: Project,
  line: LineRef,
  elements: readonly PlanElement[],
  split: Split,
): readonly PlanElement[] {
  const owner = ownerOfPlan(project, line);
  const drawn = owner && compileItems(project).get(owner.id);
  if (!owner || !drawn || elements.some(({ id }) => id === split.newNodeId)) return elements;
  const follow = elements.find(({ kind, id }) => kind === "follow" && id === split.afterNodeId);
  const afterNodeId = follow ? edgeAfterFollow(follow.id) : split.afterNodeId;
  const path = planPath(owner.planLine, ({ id }) => drawn.stretches[id] ?? []);
  const made = splitIn(path, { ...split, afterNodeId });
  if (!made) return elements;
  const { node, spacingMm } = made;
  const { at, ...fields } = node;
  return elements.flatMap((element): PlanElement[] => {
    if (element.id !== (follow?.id ?? afterNodeId)) return [element];
    const before =
      element.kind === "node" && spacingMm !== undefined ? { ...element, knotSpacingMm: spacingMm } : element;
    return [before, { ...fields, x: at[0], y: at[1] }];
  });
}

/** Whose line in plan is split, under the id that `compileItems` knows it by. */
function ownerOfPlan(
  project: Project,
  line: LineRef,
): { readonly id: string; readonly planLine: PlanLine } | undefined {
  if (line.of === "opening") {
    const opening = project.openings.find(({ id }) => id === line.openingId);
    return opening && { id: openingKey(opening.id), planLine: opening.outline };
  }
  const item = line.of === "item" ? project.items.find(({ id }) => id === line.itemId) : undefined;
  return item && { id: item.id, planLine: planLineOf(item) };
}

function splitSide(nodes: readonly SideNode[], split: Split): readonly SideNode[] {
  if (nodes.some(({ id }) => id === split.newNodeId)) return nodes;
  const made = splitIn(sidePath(nodes), split);
  if (!made) return nodes;
  const { at, ...fields } = made.node;
  const { spacingMm } = made;
  return nodes.flatMap((node): SideNode[] => {
    if (node.id !== split.afterNodeId) return [node];
    const before = spacingMm === undefined ? node : { ...node, knotSpacingMm: spacingMm };
    return [before, { ...fields, x: at[0], z: at[1] }];
  });
}

/** The new node of a split path, and the knot spacing that the half before it keeps. */
function splitIn(
  path: Path,
  { afterNodeId, t, newNodeId }: Split,
): { readonly node: PathNode; readonly spacingMm: number | undefined } | undefined {
  const split = splitPath(path, afterNodeId, t, newNodeId);
  const index = split.elements.findIndex(({ id }) => id === newNodeId);
  const node = split.elements[index];
  const before = split.elements[index - 1];
  if (node?.kind !== "node") return undefined;
  return { node, spacingMm: before?.kind === "node" ? before.knotSpacingMm : undefined };
}

type DepthNodes = Extract<Fence["lowerEdge"], { kind: "depths" }>["nodes"];

function splitDepths(nodes: DepthNodes, { afterNodeId, t, newNodeId }: Split): DepthNodes {
  const index = nodes.findIndex(({ id }) => id === afterNodeId);
  const before = nodes[index];
  const after = nodes[index + 1];
  if (!before || !after || !(t > 0 && t < 1) || nodes.some(({ id }) => id === newNodeId)) return nodes;
  const between = {
    id: newNodeId,
    alongMm: before.alongMm + (after.alongMm - before.alongMm) * t,
    depthMm: before.depthMm + (after.depthMm - before.depthMm) * t,
  };
  return [...nodes.slice(0, index + 1), between, ...nodes.slice(index + 1)];
}

/** A curve's halves keep the knots that they had together, so that it keeps its shape. */
function splitSpace(nodes: readonly SpaceNode[], { afterNodeId, t, newNodeId }: Split): readonly SpaceNode[] {
  const index = nodes.findIndex(({ id }) => id === afterNodeId);
  const [before, after] = [nodes[index], nodes[index + 1]];
  if (!before || !after || !(t > 0 && t < 1) || nodes.some(({ id }) => id === newNodeId)) return nodes;
  if (before.next === "line") {
    const at = (a: number, b: number) => a + (b - a) * t;
    const between = { x: at(before.x, after.x), y: at(before.y, after.y), z: at(before.z, after.z) };
    return [
      ...nodes.slice(0, index + 1),
      { id: newNodeId, ...between, next: "line" },
      ...nodes.slice(index + 1),
    ];
  }
  const path = compileSpacePath(nodes);
  const piece = path.ok ? path.value.find(({ plan }) => plan.edgeId === afterNodeId) : undefined;
  if (!piece) return nodes;
  const spacingMm = before.knotSpacingMm ?? distanceSpace(before, after);
  return [
    ...nodes.slice(0, index),
    { ...before, knotSpacingMm: spacingMm * t },
    { id: newNodeId, ...pointOnSpaceCubic(piece, t), next: "curve", knotSpacingMm: spacingMm * (1 - t) },
    ...nodes.slice(index + 1),
  ];
}
