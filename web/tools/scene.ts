import type { Curve, CurvePiece } from "../../core/curves/index.ts";
import type { Vec2 } from "../../core/foundation/index.ts";
import type {
  Item,
  LineRef,
  PlanElement,
  Profile,
  Project,
  ResolvedLines,
  SideNode,
} from "../../core/project/index.ts";
import type { DrawingView } from "./drawing-view.ts";
import { flattenForScreen } from "./flatten-for-screen.ts";

/** One smooth piece of a drawn edge with the points that are drawn and the edge's curve parameter at each. */
export interface Stretch {
  readonly piece: CurvePiece;
  readonly points: readonly Vec2[];
  readonly parameters: readonly number[];
}

/** One drawn edge, between two nodes in the order of the line. */
export interface SceneEdge {
  readonly edgeId: string;
  readonly kind: "line" | "curve" | "follow";
  readonly stretches: readonly Stretch[];
  /** The nodes at its ends, for a straight edge; its curve parameter counts between them. */
  readonly ends: readonly [Vec2, Vec2] | undefined;
  readonly name: string | undefined;
}

export interface SceneNode {
  readonly nodeId: string;
  readonly at: Vec2;
  /** A node between curves is drawn round, any other square, one with a radius as a ring. */
  readonly mark: "square" | "round" | "ring";
}

/** A line of the document as the board shows it: where it runs and what can be grabbed. */
export interface SceneLine {
  readonly line: LineRef;
  readonly view: DrawingView;
  readonly kind: "section" | "fence" | "profile" | "lower-edge";
  readonly name: string;
  readonly closed: boolean;
  readonly edges: readonly SceneEdge[];
  readonly nodes: readonly SceneNode[];
  /** It could not be compiled; the edges are the bare chords between its nodes. */
  readonly broken: boolean;
}

export interface Scene {
  readonly mirrored: boolean;
  readonly lines: readonly SceneLine[];
}

/** Everything drawn in plan and side view, from the document and its compiled lines. Plan before side. */
export function sceneOf(project: Project, resolved: ResolvedLines): Scene {
  return sceneOfLines(
    project,
    project.items.flatMap((item) => sceneLinesOf(item, resolved)),
    project.profiles.map((profile) => sceneOfProfile(profile, resolved)),
  );
}

/** A scene put together of the lines of every item and the lines of the profiles. */
export function sceneOfLines(
  project: Project,
  ofItems: readonly SceneLine[],
  ofProfiles: readonly SceneLine[],
): Scene {
  const inPlan = ofItems.filter((line) => line.view === "plan");
  const lowerEdges = ofItems.filter((line) => line.view === "side");
  return { mirrored: project.symmetry === "mirrored", lines: [...inPlan, ...ofProfiles, ...lowerEdges] };
}

/** The line of a profile in the side view. */
export const sceneOfProfile = (profile: Profile, resolved: ResolvedLines): SceneLine =>
  sceneOfSide({
    line: { of: "profile", profileId: profile.id },
    kind: "profile",
    name: profile.name,
    nodes: profile.nodes,
    curve: resolved.profiles[profile.id],
  });

/** The lines of an item: its outline or line in plan, and the lower edge of a fence that has heights. */
export function sceneLinesOf(item: Item, resolved: ResolvedLines): readonly SceneLine[] {
  const inPlan = sceneOfPlan(item, resolved.plan[item.id]);
  if (item.kind !== "fence" || item.lowerEdge.kind !== "heights") return [inPlan];
  const lowerEdge = sceneOfSide({
    line: { of: "lower-edge", itemId: item.id },
    kind: "lower-edge",
    name: item.name,
    nodes: item.lowerEdge.nodes,
    curve: resolved.lowerEdges[item.id],
  });
  return [inPlan, lowerEdge];
}

/** The line in the scene that a reference names. */
export const findLine = (scene: Scene, line: LineRef): SceneLine | undefined =>
  scene.lines.find((other) => isSameLine(other.line, line));

export function isSameLine(one: LineRef, other: LineRef): boolean {
  return lineKey(one) === lineKey(other);
}

/** A text that stands for a line, for comparing and for keys. */
export const lineKey = (line: LineRef): string =>
  line.of === "profile" ? `profile/${line.profileId}` : `${line.of}/${line.itemId}`;

function sceneOfPlan(item: Item, curve: Curve | undefined): SceneLine {
  const { elements, closed } = item.kind === "section" ? item.outline : item.line;
  const base = {
    line: { of: "item", itemId: item.id } as const,
    view: "plan" as const,
    kind: item.kind,
    name: item.name,
    closed,
    nodes: elements.flatMap((element, index) =>
      element.kind === "node"
        ? [
            sceneNode(
              element,
              [element.x, element.y],
              elements[index - 1] ?? (closed ? elements.at(-1) : undefined),
            ),
          ]
        : [],
    ),
  };
  const nodes = elements.flatMap((element) =>
    element.kind === "node" ? [{ id: element.id, at: [element.x, element.y] as const }] : [],
  );
  return { ...base, ...sceneEdges(elements, nodes, closed, curve) };
}

interface SideLine {
  readonly line: LineRef;
  readonly kind: "profile" | "lower-edge";
  readonly name: string;
  readonly nodes: readonly SideNode[];
  readonly curve: Curve | undefined;
}

function sceneOfSide({ line, kind, name, nodes, curve }: SideLine): SceneLine {
  const points = nodes.map((node) => ({ id: node.id, at: [node.x, node.z] as const }));
  return {
    line,
    view: "side",
    kind,
    name,
    closed: false,
    nodes: nodes.map((node, index) => sceneNode(node, [node.x, node.z], nodes[index - 1])),
    ...sceneEdges(nodes, points, false, curve),
  };
}

function sceneNode(
  node: Exclude<PlanElement, { kind: "follow" }> | SideNode,
  at: Vec2,
  before: PlanElement | SideNode | undefined,
): SceneNode {
  const touchesCurve = node.next === "curve" || before?.next === "curve";
  const hasRadius = node.radiusMm !== undefined && node.radiusMm > 0;
  return { nodeId: node.id, at, mark: touchesCurve ? "round" : hasRadius ? "ring" : "square" };
}

interface PlacedNode {
  readonly id: string;
  readonly at: Vec2;
}

function sceneEdges(
  elements: readonly (PlanElement | SideNode)[],
  nodes: readonly PlacedNode[],
  closed: boolean,
  curve: Curve | undefined,
): { readonly edges: readonly SceneEdge[]; readonly broken: boolean } {
  if (curve === undefined) return { edges: chords(nodes, closed), broken: true };
  const isReversed = runsAgainst(curve);
  const pieces = piecesByEdge(curve);
  const places = new Map(nodes.map((node) => [node.id, node.at]));
  const edges = elements.flatMap((element, index): readonly SceneEdge[] => {
    const after = elements[index + 1] ?? (closed ? elements[0] : undefined);
    const leaving = element.kind === "follow" ? `${element.id}-next` : element.id;
    const isStraight = after !== undefined && element.kind === "node" && element.next === "line";
    return [
      ...(element.kind === "follow"
        ? edgeOf(pieces.get(element.id), isReversed, {
            edgeId: element.id,
            kind: "follow",
            ends: undefined,
            name: element.edgeName,
          })
        : []),
      ...edgeOf(pieces.get(leaving), isReversed, {
        edgeId: leaving,
        kind: element.next,
        ends: isStraight ? endsOf(places, element.id, after.id) : undefined,
        name: element.kind === "node" ? element.edgeName : undefined,
      }),
    ];
  });
  return { edges, broken: false };
}

/** Outlines are compiled counter-clockwise, whichever way they were drawn; the scene keeps the drawn way. */
const runsAgainst = (curve: Curve): boolean =>
  curve.pieces.some(({ edgeId, endNodeId }) => endNodeId === edgeId || endNodeId === `${edgeId}-start`);

function piecesByEdge(curve: Curve): ReadonlyMap<string, readonly CurvePiece[]> {
  const byEdge = new Map<string, CurvePiece[]>();
  for (const piece of curve.pieces) {
    const pieces = byEdge.get(piece.edgeId);
    if (pieces) pieces.push(piece);
    else byEdge.set(piece.edgeId, [piece]);
  }
  return byEdge;
}

function edgeOf(
  pieces: readonly CurvePiece[] | undefined,
  isReversed: boolean,
  fields: Omit<SceneEdge, "stretches">,
): readonly SceneEdge[] {
  if (pieces === undefined) return [];
  const inOrder = pieces.map((piece) => ({ piece, ...flattenForScreen(piece) }));
  return [{ ...fields, stretches: isReversed ? inOrder.reverse().map(turnedRound) : inOrder }];
}

const turnedRound = (stretch: Stretch): Stretch => ({
  piece: stretch.piece,
  points: [...stretch.points].reverse(),
  parameters: stretch.parameters.map((t) => 1 - t).reverse(),
});

function endsOf(
  places: ReadonlyMap<string, Vec2>,
  fromId: string,
  toId: string,
): readonly [Vec2, Vec2] | undefined {
  const from = places.get(fromId);
  const to = places.get(toId);
  return from && to ? [from, to] : undefined;
}

/** Straight lines between the nodes, so that a line that cannot be compiled is still there to be mended. */
function chords(nodes: readonly PlacedNode[], closed: boolean): readonly SceneEdge[] {
  return nodes.flatMap((node, index) => {
    const after = nodes[index + 1] ?? (closed ? nodes[0] : undefined);
    if (after === undefined || after === node) return [];
    const piece: CurvePiece = { kind: "line", edgeId: node.id, from: node.at, to: after.at };
    return [
      {
        edgeId: node.id,
        kind: "line" as const,
        stretches: [{ piece, points: [node.at, after.at], parameters: [0, 1] }],
        ends: [node.at, after.at] as const,
        name: undefined,
      },
    ];
  });
}
