import { COINCIDENT_POINTS_MM, distance2 } from "../foundation/index.ts";
import { compileItems } from "./compile-items.ts";
import { mapEdges } from "./delete-node.ts";
import { followEndNode, followStartNode } from "./paths.ts";
import type {
  EdgeRef,
  Fence,
  FollowPiece,
  PlanElement,
  PlanNode,
  Project,
  Section,
  SideNode,
} from "./schema.ts";
import { turnPlanRound, turnSideRound } from "./turn-round.ts";

/** Why two things cannot be joined. */
export type JoinRefusal =
  | "not two of a kind"
  | "no shared edge"
  | "several shared edges"
  | "different profile"
  | "an end follows an edge"
  | "different lower edges"
  | "lower edges do not meet";

export type JoinResult =
  | { readonly ok: true; readonly project: Project; readonly keptId: string }
  | { readonly ok: false; readonly reason: JoinRefusal };

/**
 * Two fences made one, end to end at the two ends nearest to each other (a straight between them where they lie
 * apart), or two sections that share an edge made one without it. The one that is followed, else the first, keeps its
 * name; what followed the other follows the whole. The joined outline has both outlines' other edges as they were.
 */
export function joinItems(project: Project, firstId: string, secondId: string): JoinResult {
  const first = project.items.find(({ id }) => id === firstId);
  const second = project.items.find(({ id }) => id === secondId);
  if (!first || !second || first === second) return refuse("not two of a kind");
  if (first.kind === "fence" && second.kind === "fence") return joinFences(project, first, second);
  if (first.kind !== "section" || second.kind !== "section") return refuse("not two of a kind");
  return followsOf(second, first.id).length > 0
    ? joinSections(project, first, second)
    : joinSections(project, second, first);
}

const refuse = (reason: JoinRefusal): JoinResult => ({ ok: false, reason });

const followsOf = (section: Section, ownerId: string): readonly FollowPiece[] =>
  section.outline.elements.flatMap((element) =>
    element.kind === "follow" && element.edge.itemId === ownerId && element.edge.hand === "right"
      ? [element]
      : [],
  );

function joinSections(project: Project, owner: Section, other: Section): JoinResult {
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

function joinFences(project: Project, first: Fence, second: Fence): JoinResult {
  const [a, b] = [ownNodes(first), ownNodes(second)];
  if (!a || !b) return refuse("an end follows an edge");
  const placed = endToEnd(a, b);
  const gapMm = gapBetween(placed.front, placed.rear);
  const isMet = gapMm <= COINCIDENT_POINTS_MM;
  const names = freshIds(placed.rear, new Set(placed.front.map(({ id }) => id)));
  const rear = placed.rear.map((node) => ({ ...node, id: names.get(node.id) ?? node.id }));
  const [met, ...beyond] = rear;
  const last = placed.front.at(-1);
  if (!met || !last) return refuse("an end follows an edge");
  const elements = isMet
    ? [...placed.front.slice(0, -1), corner(last, met), ...beyond]
    : [...placed.front, ...rear];
  const lowerEdge = joinLowerEdges(project, first, second, { ...placed, gapMm });
  if (typeof lowerEdge === "string") return refuse(lowerEdge);
  if (isMet) {
    const old = placed.rear[0]?.id;
    if (old !== undefined) names.set(old, last.id);
  }
  const fence: Fence = {
    ...first,
    line: { ...first.line, elements },
    lowerEdge,
    ...joinedBends(project, first, second, { ...placed, gapMm }),
  };
  return withJoined(project, fence, second.id, (edge) =>
    edge.itemId === second.id
      ? {
          ...edge,
          itemId: first.id,
          fromNodeId: names.get(edge.fromNodeId) ?? edge.fromNodeId,
          toNodeId: names.get(edge.toNodeId) ?? edge.toNodeId,
        }
      : edge,
  );
}

const ownNodes = (fence: Fence): readonly PlanNode[] | undefined => {
  const nodes = fence.line.elements.filter((element) => element.kind === "node");
  return nodes.length === fence.line.elements.length && nodes.length > 1 ? nodes : undefined;
};

interface EndToEnd {
  readonly front: readonly PlanNode[];
  readonly rear: readonly PlanNode[];
  readonly isFrontTurned: boolean;
  readonly isRearTurned: boolean;
}

/** Both lines so that the end of the one and the start of the other are the nearest ends. */
function endToEnd(a: readonly PlanNode[], b: readonly PlanNode[]): EndToEnd {
  const ways = [false, true].flatMap((isFrontTurned) =>
    [false, true].map(
      (isRearTurned): EndToEnd => ({
        front: isFrontTurned ? turnPlanRound(a) : a,
        rear: isRearTurned ? turnPlanRound(b) : b,
        isFrontTurned,
        isRearTurned,
      }),
    ),
  );
  return ways.reduce((best, way) =>
    gapBetween(way.front, way.rear) < gapBetween(best.front, best.rear) ? way : best,
  );
}

function gapBetween(front: readonly PlanNode[], rear: readonly PlanNode[]): number {
  const [end, start] = [front.at(-1), rear[0]];
  return end && start ? distance2([end.x, end.y], [start.x, start.y]) : Number.POSITIVE_INFINITY;
}

/** One node for two that met: it arrives as the one did and leaves as the other. */
function corner(last: PlanNode, met: PlanNode): PlanNode {
  const {
    knotSpacingMm: _spacing,
    tangentOutRad: _out,
    edgeName: _name,
    radiusMm: _radius,
    ...arrives
  } = last;
  return {
    ...arrives,
    next: met.next,
    ...(met.knotSpacingMm === undefined ? {} : { knotSpacingMm: met.knotSpacingMm }),
    ...(met.tangentOutRad === undefined ? {} : { tangentOutRad: met.tangentOutRad, meets: "corner" }),
    ...(met.edgeName === undefined ? {} : { edgeName: met.edgeName }),
  };
}

/** Lower edges that meet at heights nearer than this are one, mm: less than a knife follows. */
const SAME_HEIGHT_MM = 0.1;

function joinLowerEdges(
  project: Project,
  first: Fence,
  second: Fence,
  placed: EndToEnd & { readonly gapMm: number },
): Fence["lowerEdge"] | JoinRefusal {
  const [a, b] = [first.lowerEdge, second.lowerEdge];
  if (a.kind === "depths" && b.kind === "depths") {
    const lines = compileItems(project);
    const lengthA = lines.get(first.id)?.curve?.lengthMm;
    const lengthB = lines.get(second.id)?.curve?.lengthMm;
    if (lengthA === undefined || lengthB === undefined) return "different lower edges";
    const front = placed.isFrontTurned ? fromOtherEnd(a.nodes, lengthA) : a.nodes;
    const rear = placed.isRearTurned ? fromOtherEnd(b.nodes, lengthB) : b.nodes;
    const beyond = rear.map((node) => ({ ...node, alongMm: node.alongMm + lengthA + placed.gapMm }));
    const [end, start] = [front.at(-1), beyond[0]];
    const isOne =
      end !== undefined &&
      start !== undefined &&
      Math.abs(end.alongMm - start.alongMm) <= COINCIDENT_POINTS_MM;
    if (isOne && Math.abs(end.depthMm - start.depthMm) > SAME_HEIGHT_MM) return "lower edges do not meet";
    return { kind: "depths", nodes: renamed(front, isOne ? beyond.slice(1) : beyond) };
  }
  if (a.kind !== "heights" || b.kind !== "heights") return "different lower edges";
  const runs = [rearward(a.nodes), rearward(b.nodes)].toSorted(
    (one, two) => (one[0]?.x ?? 0) - (two[0]?.x ?? 0),
  );
  const [front = [], rear = []] = runs;
  const [end, start] = [front.at(-1), rear[0]];
  if (!end || !start || start.x < end.x - COINCIDENT_POINTS_MM) return "lower edges do not meet";
  if (start.x > end.x + COINCIDENT_POINTS_MM) return { kind: "heights", nodes: renamed(front, rear) };
  if (Math.abs(start.z - end.z) > SAME_HEIGHT_MM) return "lower edges do not meet";
  const { tangentOutRad: _out, knotSpacingMm: _spacing, radiusMm: _radius, ...arrives } = end;
  const met: SideNode = {
    ...arrives,
    next: start.next,
    ...(start.knotSpacingMm === undefined ? {} : { knotSpacingMm: start.knotSpacingMm }),
    ...(start.tangentOutRad === undefined ? {} : { tangentOutRad: start.tangentOutRad, meets: "corner" }),
  };
  return { kind: "heights", nodes: renamed([...front.slice(0, -1), met], rear.slice(1)) };
}

/** The methods chosen for bends of both fences, by their lengths along the joined line. */
function joinedBends(
  project: Project,
  first: Fence,
  second: Fence,
  { isFrontTurned, isRearTurned, gapMm }: EndToEnd & { readonly gapMm: number },
): Pick<Fence, "bends"> {
  if (!first.bends && !second.bends) return {};
  const lines = compileItems(project);
  const lengthOf = ({ id }: Fence) => lines.get(id)?.curve?.lengthMm ?? 0;
  const placed = (fence: Fence, isTurned: boolean, fromMm: number) =>
    (fence.bends ?? []).map((bend) => ({
      ...bend,
      atMm: fromMm + (isTurned ? lengthOf(fence) - bend.atMm : bend.atMm),
    }));
  return {
    bends: [...placed(first, isFrontTurned, 0), ...placed(second, isRearTurned, lengthOf(first) + gapMm)],
  };
}

const rearward = (nodes: readonly SideNode[]): readonly SideNode[] =>
  (nodes.at(-1)?.x ?? 0) < (nodes[0]?.x ?? 0) ? turnSideRound(nodes) : nodes;

function fromOtherEnd<T extends { readonly alongMm: number }>(
  nodes: readonly T[],
  lengthMm: number,
): readonly T[] {
  return nodes.map((node) => ({ ...node, alongMm: Math.max(0, lengthMm - node.alongMm) })).toReversed();
}

/** Both runs as one, with ids that none has twice. */
function renamed<T extends { readonly id: string }>(front: readonly T[], rear: readonly T[]): readonly T[] {
  const names = freshIds(rear, new Set(front.map(({ id }) => id)));
  return [...front, ...rear.map((node) => ({ ...node, id: names.get(node.id) ?? node.id }))];
}

/** For each id that is taken a new one: its own letters and the next free count. */
function freshIds(
  elements: readonly { readonly id: string }[],
  taken: ReadonlySet<string>,
): Map<string, string> {
  const used = new Set([...taken, ...elements.map(({ id }) => id)]);
  const names = new Map<string, string>();
  for (const { id } of elements) {
    if (!taken.has(id)) continue;
    const stem = id.replace(/\d+$/, "").slice(0, 30) || "n";
    let count = 1;
    while (used.has(`${stem}${count}`)) count++;
    names.set(id, `${stem}${count}`);
    used.add(`${stem}${count}`);
  }
  return names;
}

function withJoined(
  project: Project,
  joined: Section | Fence,
  goneId: string,
  lead: (edge: EdgeRef) => EdgeRef,
): JoinResult {
  const items = project.items.flatMap((item) =>
    item.id === goneId ? [] : [mapEdges(item.id === joined.id ? joined : item, lead)],
  );
  const openings = project.openings.map((opening) =>
    opening.itemId === goneId ? { ...opening, itemId: joined.id } : opening,
  );
  return { ok: true, project: { ...project, items, openings }, keptId: joined.id };
}
