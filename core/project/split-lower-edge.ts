import { compilePath, pointOnPiece } from "../curves/index.ts";
import { COINCIDENT_POINTS_MM } from "../foundation/index.ts";
import { depthAlong } from "./depth-along.ts";
import { directionAtNode } from "./direction-at-node.ts";
import { freshId } from "./fresh-id.ts";
import { sidePath } from "./paths.ts";
import type { Fence, Project, SideNode } from "./schema.ts";
import { splitLine } from "./split-line.ts";

type LowerEdge = Fence["lowerEdge"];

/** The lower edge in front of the cut and behind it, in the direction of the line. */
export function splitLowerEdge(
  project: Project,
  fence: Fence,
  cutXMm: number,
  cutAlongMm: number,
): readonly [LowerEdge, LowerEdge] {
  const edge = fence.lowerEdge;
  if (edge.kind === "depths") return splitDepths(edge, cutAlongMm);
  const { nodes, cutId } = heightsWithCut(project, fence, cutXMm);
  const index = nodes.findIndex(({ id }) => id === cutId);
  if (index <= 0 || index >= nodes.length - 1) return [edge, edge];
  const [before, after] = [nodes.slice(0, index + 1), nodes.slice(index)];
  const ends = fence.line.elements;
  const [start, end] = [ends[0], ends.at(-1)];
  const goesRearward =
    start?.kind !== "node" || end?.kind !== "node" || (end.x - start.x) * goesIn(nodes) >= 0;
  const halves = [withFreeEnd(before, "last", nodes), withFreeEnd(after, "first", nodes)] as const;
  const [first, second] = goesRearward ? halves : [halves[1], halves[0]];
  return [
    { kind: "heights", nodes: first },
    { kind: "heights", nodes: second },
  ];
}

const goesIn = (nodes: readonly SideNode[]): number =>
  (nodes.at(-1)?.x ?? 0) - (nodes[0]?.x ?? 0) >= 0 ? 1 : -1;

/** The heights with a node where the cut is: one that is there, or one that keeps the shape. */
function heightsWithCut(
  project: Project,
  fence: Fence,
  cutXMm: number,
): { readonly nodes: readonly SideNode[]; readonly cutId: string | undefined } {
  const edge = fence.lowerEdge;
  if (edge.kind === "depths") return { nodes: [], cutId: undefined };
  const there = edge.nodes.find(({ x }) => Math.abs(x - cutXMm) <= COINCIDENT_POINTS_MM);
  if (there) return { nodes: edge.nodes, cutId: there.id };
  const index = edge.nodes.findIndex((node, i) => {
    const next = edge.nodes[i + 1];
    return next !== undefined && (node.x - cutXMm) * (next.x - cutXMm) < 0;
  });
  const [from, to] = [edge.nodes[index], edge.nodes[index + 1]];
  if (!from || !to) return { nodes: edge.nodes, cutId: undefined };
  const newNodeId = freshId("c", edge.nodes);
  const t =
    from.next === "line" ? (cutXMm - from.x) / (to.x - from.x) : parameterAt(edge.nodes, from.id, cutXMm);
  const split = splitLine(
    project,
    { of: "lower-edge", itemId: fence.id },
    { afterNodeId: from.id, t, newNodeId },
  );
  const item = split.items.find(({ id }) => id === fence.id);
  const nodes =
    item?.kind === "fence" && item.lowerEdge.kind === "heights" ? item.lowerEdge.nodes : edge.nodes;
  return { nodes, cutId: newNodeId };
}

const HALVINGS = 60;

/** Where a curve of the side view passes a station, by halving: its x goes one way only. */
function parameterAt(nodes: readonly SideNode[], edgeId: string, xMm: number): number {
  const compiled = compilePath(sidePath(nodes));
  const piece = compiled.ok ? compiled.value.pieces.find((one) => one.edgeId === edgeId) : undefined;
  if (!piece) return 0.5;
  const rises = pointOnPiece(piece, 1)[0] > pointOnPiece(piece, 0)[0];
  let [low, high] = [0, 1];
  for (let round = 0; round < HALVINGS; round++) {
    const middle = (low + high) / 2;
    if (pointOnPiece(piece, middle)[0] < xMm === rises) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** The half of a curve keeps its direction at the cut. */
function withFreeEnd(
  half: readonly SideNode[],
  end: "first" | "last",
  all: readonly SideNode[],
): readonly SideNode[] {
  const compiled = compilePath(sidePath(all));
  return half.map((node, index): SideNode => {
    const isEnd = index === (end === "first" ? 0 : half.length - 1);
    if (!isEnd) return node;
    const { radiusMm: _radius, ...bare } = node;
    const isCurve = (end === "first" ? node.next : half[index - 1]?.next) === "curve";
    const direction =
      isCurve && compiled.ok
        ? directionAtNode(compiled.value, node.id, end === "first" ? "out" : "in")
        : undefined;
    const rest: SideNode = end === "last" ? { ...bare, next: "line" } : bare;
    if (direction === undefined) return rest;
    return {
      ...rest,
      meets: "corner",
      ...(end === "first" ? { tangentOutRad: direction } : { tangentInRad: direction }),
    };
  });
}

function splitDepths(
  edge: Extract<LowerEdge, { kind: "depths" }>,
  cutMm: number,
): readonly [LowerEdge, LowerEdge] {
  const inOrder = edge.nodes.toSorted((a, b) => a.alongMm - b.alongMm);
  const cut = { alongMm: cutMm, depthMm: depthAlong(inOrder, cutMm) };
  const id = freshId("c", edge.nodes);
  const before = edge.nodes.filter(({ alongMm }) => alongMm < cutMm - COINCIDENT_POINTS_MM);
  const after = edge.nodes.filter(({ alongMm }) => alongMm > cutMm + COINCIDENT_POINTS_MM);
  return [
    { kind: "depths", nodes: [...before, { id, ...cut }] },
    {
      kind: "depths",
      nodes: [
        { id, ...cut, alongMm: 0 },
        ...after.map((node) => ({ ...node, alongMm: node.alongMm - cutMm })),
      ],
    },
  ];
}
