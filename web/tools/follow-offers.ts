import { COINCIDENT_POINTS_MM, distance2, type Vec2 } from "../../core/foundation/index.ts";
import type { Command, Project } from "../../core/project/index.ts";
import { elementsOfLine } from "./elements-of-line.ts";
import { nearestOnLine, type OnEdge } from "./nearest.ts";
import { newId } from "./new-id.ts";
import { findLine, type Scene, type SceneLine } from "./scene.ts";

/** A segment that lies with both ends on another item's edge, and the commands that let it follow that edge. */
export interface FollowOffer {
  readonly afterNodeId: string;
  readonly beforeNodeId: string;
  readonly otherName: string;
  readonly commands: readonly Command[];
}

/** Ends this near to an edge lie on it: places on a curve are found along chords a tenth of a mm off. */
const ON_EDGE_MM = 0.15;

/** Beyond this many pairs of node and edge looking would hold up the screen. */
const MOST_PAIRS = 50_000;

/** Every segment of an item that could follow another item's edge, the way round that is nearer to it in length. */
export function followOffers(project: Project, scene: Scene, itemId: string): readonly FollowOffer[] {
  const line = findLine(scene, { of: "item", itemId });
  if (!line || line.broken) return [];
  const others = scene.lines.filter(
    (other) =>
      other.view === "plan" &&
      (other.kind === "section" || other.kind === "plate") &&
      !other.broken &&
      other.line.of === "item" &&
      other.line.itemId !== itemId &&
      !followsItem(project, other.line.itemId, itemId),
  );
  const pairs = line.nodes.length * others.reduce((sum, other) => sum + other.edges.length, 0);
  if (others.length === 0 || pairs > MOST_PAIRS) return [];
  return line.nodes.flatMap((node, index) => {
    const next = line.nodes[index + 1] ?? (line.closed ? line.nodes[0] : undefined);
    const edge = line.edges.find((candidate) => candidate.edgeId === node.nodeId);
    if (!next || !edge || !reaches(project, itemId, node.nodeId, next.nodeId)) return [];
    const offer = others.flatMap((other) => offerFor(project, other, itemId, [node.at, next.at]))[0];
    return offer ? [{ ...offer, ...withEnds(offer.commands, node.nodeId, next.nodeId) }] : [];
  });
}

function followsItem(project: Project, itemId: string, followedId: string): boolean {
  return elementsOfLine(project, { of: "item", itemId }).some(
    (element) => element.kind === "follow" && element.edge.itemId === followedId,
  );
}

/** Whether the segment that leaves a node ends at the next node, with no followed piece between. */
function reaches(project: Project, itemId: string, fromId: string, toId: string): boolean {
  const elements = elementsOfLine(project, { of: "item", itemId });
  const index = elements.findIndex((element) => element.id === fromId);
  return (elements[index + 1] ?? elements[0])?.id === toId;
}

type Follow = Extract<Command, { kind: "follow-edge" }>;

function offerFor(
  project: Project,
  other: SceneLine,
  itemId: string,
  ends: readonly [Vec2, Vec2],
): readonly Omit<FollowOffer, "afterNodeId" | "beforeNodeId">[] {
  if (other.line.of !== "item" || distance2(...ends) < COINCIDENT_POINTS_MM) return [];
  const from = onLine(other, ends[0]);
  const to = onLine(other, ends[1]);
  if (!from || !to || !runsAlong(other, ends)) return [];
  const used = elementsOfLine(project, other.line).map((element) => element.id);
  const start = nodeAt(other, from, newId("n", used));
  const end = nodeAt(other, to, newId("n", [...used, start.nodeId]));
  // An edge that itself follows another is split where that one is drawn, not here.
  if ([start, end].some(({ split }) => split?.edge.kind === "follow")) return [];
  const isForward = lengthBetween(other, from, to) <= lengthBetween(other, to, from);
  const [first, last] = isForward ? [start, end] : [end, start];
  const own = elementsOfLine(project, { of: "item", itemId }).map((element) => element.id);
  const follow: Follow = {
    kind: "follow-edge",
    itemId,
    afterNodeId: "",
    beforeNodeId: "",
    edge: {
      itemId: other.line.itemId,
      fromNodeId: first.nodeId,
      toNodeId: last.nodeId,
      hand: "right",
    },
    direction: isForward ? "along" : "against",
    newId: newId("e", own),
  };
  return [{ otherName: other.name, commands: [...splits(other, [start, end]), follow] }];
}

/**
 * The commands that put the ends into the other line where it has no node yet. Of two on one edge the farther is
 * split off first; the nearer then lies at its share of what is left.
 */
function splits(other: SceneLine, ends: readonly EndNode[]): readonly Command[] {
  const places = ends.flatMap(({ nodeId, split }) => (split ? [{ nodeId, ...split }] : []));
  const [farther, nearer] = [...places].sort((a, b) => b.t - a.t);
  const isShared = nearer !== undefined && farther?.edge.edgeId === nearer.edge.edgeId;
  return [farther, nearer].flatMap((place): readonly Command[] => {
    if (place === undefined) return [];
    const t = isShared && place === nearer ? place.t / farther.t : place.t;
    const afterNodeId = place.edge.edgeId;
    return [{ kind: "split-segment", line: other.line, afterNodeId, t, newNodeId: place.nodeId }];
  });
}

const withEnds = (commands: readonly Command[], afterNodeId: string, beforeNodeId: string) => ({
  afterNodeId,
  beforeNodeId,
  commands: commands.map((command) =>
    command.kind === "follow-edge" ? { ...command, afterNodeId, beforeNodeId } : command,
  ),
});

const onLine = (line: SceneLine, at: Vec2): OnEdge | undefined =>
  nearestOnLine(line, { view: "plan", at, mmPerPx: [1, 1], reachPx: ON_EDGE_MM, snaps: false });

/** Also the middle of the segment must be near the edge, else it merely begins and ends there. */
function runsAlong(other: SceneLine, [from, to]: readonly [Vec2, Vec2]): boolean {
  const middle: Vec2 = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
  const reachPx = Math.max(1, distance2(from, to) * 0.1);
  return (
    nearestOnLine(other, { view: "plan", at: middle, mmPerPx: [1, 1], reachPx, snaps: false }) !== undefined
  );
}

interface EndNode {
  readonly nodeId: string;
  /** Where the node is to be put into the line; absent where it is there already. */
  readonly split?: OnEdge;
}

/** The node of the other line at a place; where there is none, one that is to be put into its edge. */
function nodeAt(other: SceneLine, place: OnEdge, newNodeId: string): EndNode {
  const node = other.nodes.find((candidate) => distance2(candidate.at, place.at) <= ON_EDGE_MM);
  return node ? { nodeId: node.nodeId } : { nodeId: newNodeId, split: place };
}

/** Length along the other line from one place to another, in its own direction. */
function lengthBetween(line: SceneLine, from: OnEdge, to: OnEdge): number {
  const whole = line.edges.reduce((sum, edge) => sum + edgeLength(line, edge.edgeId), 0);
  const difference = positionOf(line, to) - positionOf(line, from);
  if (difference >= 0) return difference;
  return line.closed ? difference + whole : Number.POSITIVE_INFINITY;
}

function positionOf(line: SceneLine, place: OnEdge): number {
  const index = line.edges.findIndex((edge) => edge.edgeId === place.edge.edgeId);
  const before = line.edges.slice(0, index).reduce((sum, edge) => sum + edgeLength(line, edge.edgeId), 0);
  return before + edgeLength(line, place.edge.edgeId) * place.t;
}

function edgeLength(line: SceneLine, edgeId: string): number {
  const edge = line.edges.find((candidate) => candidate.edgeId === edgeId);
  const points = edge?.stretches.flatMap((stretch) => stretch.points) ?? [];
  return points.reduce((sum, point, index) => {
    const before = points[index - 1];
    return before ? sum + distance2(before, point) : sum;
  }, 0);
}
