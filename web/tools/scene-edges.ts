import type { Curve, CurvePiece } from "../../core/curves/index.ts";
import type { Vec2 } from "../../core/foundation/index.ts";
import type { PlanElement, SideNode } from "../../core/project/index.ts";
import { flattenForScreen } from "./flatten-for-screen.ts";
import type { SceneEdge, SceneNode, Stretch } from "./scene.ts";

/** A node as the board shows it: how it is marked tells what meets there. */
export function sceneNode(
  node: Exclude<PlanElement, { kind: "follow" }> | SideNode,
  at: Vec2,
  before: PlanElement | SideNode | undefined,
): SceneNode {
  const touchesCurve = node.next === "curve" || before?.next === "curve";
  const hasRadius = node.radiusMm !== undefined && node.radiusMm > 0;
  return { nodeId: node.id, at, mark: touchesCurve ? "round" : hasRadius ? "ring" : "square" };
}

/** The edges of a line in the order of its elements; the bare chords between its nodes where it has no curve. */
export function sceneEdges(
  elements: readonly (PlanElement | SideNode)[],
  nodes: readonly SceneNode[],
  closed: boolean,
  curve: Pick<Curve, "pieces"> | undefined,
): { readonly edges: readonly SceneEdge[]; readonly broken: boolean } {
  if (curve === undefined) return { edges: chords(nodes, closed), broken: true };
  const isReversed = runsAgainst(curve);
  const pieces = piecesByEdge(curve);
  const places = new Map(nodes.map((node) => [node.nodeId, node.at]));
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

/** An edge that follows from others, as its pieces run. */
export const derivedEdge = (edgeId: string, pieces: readonly CurvePiece[]): SceneEdge => ({
  edgeId,
  kind: "derived",
  ends: undefined,
  name: undefined,
  stretches: pieces.map((piece) => ({ piece, ...flattenForScreen(piece) })),
});

/** Outlines are compiled counter-clockwise, whichever way they were drawn; the scene keeps the drawn way. */
const runsAgainst = (curve: Pick<Curve, "pieces">): boolean =>
  curve.pieces.some(({ edgeId, endNodeId }) => endNodeId === edgeId || endNodeId === `${edgeId}-start`);

function piecesByEdge(curve: Pick<Curve, "pieces">): ReadonlyMap<string, readonly CurvePiece[]> {
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
function chords(nodes: readonly SceneNode[], closed: boolean): readonly SceneEdge[] {
  return nodes.flatMap((node, index) => {
    const after = nodes[index + 1] ?? (closed ? nodes[0] : undefined);
    if (after === undefined || after === node) return [];
    const piece: CurvePiece = { kind: "line", edgeId: node.nodeId, from: node.at, to: after.at };
    return [
      {
        edgeId: node.nodeId,
        kind: "line" as const,
        stretches: [{ piece, points: [node.at, after.at], parameters: [0, 1] }],
        ends: [node.at, after.at] as const,
        name: undefined,
      },
    ];
  });
}
