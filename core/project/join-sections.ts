import { freshIds, type JoinResult, refuse, withJoined } from "./joined-item.ts";
import { followEndNode, followStartNode } from "./paths.ts";
import type { EdgeRef, FollowPiece, PlanElement, Project, Section } from "./schema.ts";
import { turnPlanRound } from "./turn-round.ts";

export const followsOf = (section: Section, ownerId: string): readonly FollowPiece[] =>
  section.outline.elements.flatMap((element) =>
    element.kind === "follow" && element.edge.itemId === ownerId && element.edge.hand === "right"
      ? [element]
      : [],
  );

export function joinSections(project: Project, owner: Section, other: Section): JoinResult {
  const [shared, ...more] = followsOf(other, owner.id);
  if (!shared) return refuse("no shared edge");
  if (more.length > 0) return refuse("several shared edges");
  const isSame =
    owner.profileId === other.profileId &&
    owner.headingRad === other.headingRad &&
    owner.tiltRad === other.tiltRad;
  if (!isSame) return refuse("different profile");
  const kept = elementsRound(owner.outline.elements, shared.edge.toNodeId, shared.edge.fromNodeId);
  const rest = restAfter(other.outline.elements, shared);
  if (!kept || !rest || !owner.outline.closed || !other.outline.closed) return refuse("no shared edge");
  const names = freshIds(rest.elements, new Set(owner.outline.elements.map(({ id }) => id)));
  const joined: readonly PlanElement[] = [
    ...bareEnds(kept, rest.next),
    ...rest.elements.map((element) => ({ ...element, id: names.get(element.id) ?? element.id })),
  ];
  const section: Section = { ...owner, outline: { ...owner.outline, elements: joined } };
  const [start, end] =
    shared.direction === "against"
      ? [shared.edge.toNodeId, shared.edge.fromNodeId]
      : [shared.edge.fromNodeId, shared.edge.toNodeId];
  names.set(followStartNode(shared.id), start);
  names.set(followEndNode(shared.id), end);
  const lead = (edge: EdgeRef): EdgeRef =>
    edge.itemId === other.id
      ? {
          ...edge,
          itemId: owner.id,
          fromNodeId: names.get(edge.fromNodeId) ?? edge.fromNodeId,
          toNodeId: names.get(edge.toNodeId) ?? edge.toNodeId,
        }
      : edge;
  return withJoined(project, section, other.id, lead);
}

/** The elements from one node on to another, round the end of a closed line too; undefined where one is missing. */
function elementsRound(
  elements: readonly PlanElement[],
  fromId: string,
  toId: string,
): readonly PlanElement[] | undefined {
  const from = elements.findIndex(({ id }) => id === fromId);
  if (from < 0) return undefined;
  const turned = [...elements.slice(from), ...elements.slice(0, from)];
  const to = turned.findIndex(({ id }) => id === toId);
  return to > 0 ? turned.slice(0, to + 1) : undefined;
}

/** The other section's own edges, from the end of the owner's kept ones back to their start. */
function restAfter(
  elements: readonly PlanElement[],
  shared: FollowPiece,
): { readonly elements: readonly PlanElement[]; readonly next: "line" | "curve" } | undefined {
  const index = elements.findIndex(({ id }) => id === shared.id);
  const rest = [...elements.slice(index + 1), ...elements.slice(0, index)];
  if (shared.direction === "against") return { elements: rest, next: shared.next };
  const nodes = rest.filter((element) => element.kind === "node");
  if (nodes.length < rest.length) return undefined;
  const turned = turnPlanRound(nodes);
  const last = turned.length - 1;
  return {
    // The run turned round ends where it began: its last node leaves by the segment that left the shared edge.
    elements: turned.map((node, i) => (i === last ? { ...node, next: shared.next } : node)),
    next: rest.at(-1)?.next ?? "line",
  };
}

/** The nodes where the shared edge ended are plain corners now. */
function bareEnds(elements: readonly PlanElement[], lastNext: "line" | "curve"): readonly PlanElement[] {
  return elements.map((element, index): PlanElement => {
    const isLast = index === elements.length - 1;
    if (element.kind !== "node" || (index > 0 && !isLast)) return element;
    const { radiusMm: _radius, ...rest } = element;
    if (!isLast) {
      const { tangentInRad: _in, ...first } = rest;
      return first;
    }
    const { knotSpacingMm: _spacing, tangentOutRad: _out, edgeName: _name, ...last } = rest;
    return { ...last, next: lastNext };
  });
}
