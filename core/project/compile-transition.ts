import {
  type Curve,
  type CurvePiece,
  compileSpacePath,
  endOfPiece,
  mirrorPiece,
  reversePiece,
  type SpaceCubic,
  startOfPiece,
  toCurve,
} from "../curves/index.ts";
import { at, COINCIDENT_POINTS_MM, distance2, type Problem } from "../foundation/index.ts";
import { freeEdgeOwner, type LineOwner } from "./check-line.ts";
import { type DrawnLine, findStretch, type Surroundings } from "./find-stretch.ts";
import { fromPathProblem } from "./from-path-problem.ts";
import { nameOfItem } from "./names.ts";
import type { ResolvedEdge, TransitionEdges } from "./resolved-lines.ts";
import type { EdgeRef, Plate, Transition, TransitionEdge } from "./schema.ts";

/** Nodes and edges of a transition's outline in plan, in its own direction: first, end, second (back), start. */
export const TRANSITION_NODES = ["first-start", "first-end", "second-end", "second-start"] as const;

/**
 * The two edges of a transition and, where both are known in plan, its outline there. The second edge is turned so
 * that both run the same way: the closing edges are then the shorter ones.
 */
export function compileTransition(item: Transition, around: Surroundings): DrawnLine {
  const problems: Problem[] = [];
  const [first, drawnSecond] = (["first", "second"] as const).map((side) =>
    resolveEdge(item[side], item, side, around, problems),
  );
  if (!first || !drawnSecond) return { stretches: {}, followed: {}, problems };
  const second = runsAgainst(first, drawnSecond) ? reverseEdge(drawnSecond) : drawnSecond;
  const edges: TransitionEdges = { first, second };
  const curve = outlineInPlan(edges);
  return { ...(curve && { curve }), edges, stretches: {}, followed: {}, problems };
}

function resolveEdge(
  drawn: TransitionEdge,
  item: Transition,
  side: "first" | "second",
  around: Surroundings,
  problems: Problem[],
): ResolvedEdge | undefined {
  if (drawn.kind === "stretch") return resolveStretch(drawn.edge, item, side, around, problems);
  const compiled = compileSpacePath(drawn.nodes);
  if (compiled.ok) return { kind: "free", pieces: compiled.value };
  const owner = freeEdgeOwner(item, side);
  problems.push(...compiled.problems.map((problem) => fromPathProblem(problem, owner, "xy")));
  return undefined;
}

function resolveStretch(
  edge: EdgeRef,
  item: Transition,
  side: "first" | "second",
  around: Surroundings,
  problems: Problem[],
): ResolvedEdge | undefined {
  const here: LineOwner = { name: nameOfItem(item), place: { itemId: item.id, nodeId: side } };
  const other = around.items.get(edge.itemId);
  const { itemId, hand } = edge;
  if (other?.kind === "fence") {
    problems.push({ ...here, kind: "edge-not-for-transition", otherName: nameOfItem(other) });
    return undefined;
  }
  if (other?.kind === "plate") {
    const wing = wingOf(other, edge);
    if (wing) return { kind: "wing", itemId, hand, ...wing };
  }
  if (other?.kind === "transition") return resolveOnTransition(edge, other, here, around, problems);
  const found = findStretch(edge, here, around);
  if ("problem" in found) {
    problems.push(found.problem);
    return undefined;
  }
  const pieces = hand === "left" ? found.pieces.map(mirrorPiece) : found.pieces;
  return { kind: "stretch", itemId, hand, edgeIds: edgeIdsOf(pieces), pieces };
}

const edgeIdsOf = (pieces: readonly CurvePiece[]): readonly string[] => [
  ...new Set(pieces.map(({ edgeId }) => edgeId)),
];

/** The wing that a reference means: its free edge runs from `<wing>-start` to `<wing>-end`. */
function wingOf(
  plate: Plate,
  { fromNodeId, toNodeId }: EdgeRef,
): { readonly wingId: string; readonly isReversed: boolean } | undefined {
  for (const { id } of plate.wings) {
    if (fromNodeId === `${id}-start` && toNodeId === `${id}-end`) return { wingId: id, isReversed: false };
    if (fromNodeId === `${id}-end` && toNodeId === `${id}-start`) return { wingId: id, isReversed: true };
  }
  return undefined;
}

/** A stretch of another transition is a stretch of what that one's edge is made of, or its closing edge. */
function resolveOnTransition(
  edge: EdgeRef,
  other: Transition,
  here: LineOwner,
  around: Surroundings,
  problems: Problem[],
): ResolvedEdge | undefined {
  const edges = around.lineOf(other).edges;
  const fail = (problem: Problem): undefined => {
    problems.push(problem);
    return undefined;
  };
  if (!edges) return fail({ ...here, kind: "followed-line-missing", otherName: nameOfItem(other) });
  const { fromNodeId, toNodeId, hand, itemId } = edge;
  const joins = (a: string, b: string) => fromNodeId === a && toNodeId === b;
  if (joins("first-end", "second-end"))
    return { kind: "closing", itemId, hand, end: "end", isReversed: false };
  if (joins("second-end", "first-end"))
    return { kind: "closing", itemId, hand, end: "end", isReversed: true };
  if (joins("first-start", "second-start"))
    return { kind: "closing", itemId, hand, end: "start", isReversed: false };
  if (joins("second-start", "first-start"))
    return { kind: "closing", itemId, hand, end: "start", isReversed: true };
  for (const side of ["first", "second"] as const) {
    const stretch = stretchOfEdge(edges[side], side, edge);
    if (stretch) return hand === "left" ? mirrorEdge(stretch) : stretch;
  }
  return fail({
    ...here,
    kind: "unknown-reference",
    field: "edge",
    missingId: `${fromNodeId} to ${toNodeId}`,
  });
}

/** A stretch of a transition's edge between two of its nodes, in either direction; undefined where it has none. */
function stretchOfEdge(
  whole: ResolvedEdge,
  side: "first" | "second",
  { fromNodeId, toNodeId }: EdgeRef,
): ResolvedEdge | undefined {
  const [start, end] = [`${side}-start`, `${side}-end`];
  if (fromNodeId === start && toNodeId === end) return whole;
  if (fromNodeId === end && toNodeId === start) return reverseEdge(whole);
  if (whole.kind !== "free") return undefined;
  const { pieces } = whole;
  const placeOf = (nodeId: string): number => {
    if (nodeId === start) return 0;
    if (nodeId === end) return pieces.length;
    const index = pieces.findIndex(({ plan }) => plan.startNodeId === nodeId);
    if (index >= 0) return index;
    return pieces.at(-1)?.plan.endNodeId === nodeId ? pieces.length : Number.NaN;
  };
  const [from, to] = [placeOf(fromNodeId), placeOf(toNodeId)];
  if (from < to) return { kind: "free", pieces: pieces.slice(from, to) };
  if (from > to) return reverseEdge({ kind: "free", pieces: pieces.slice(to, from) });
  return undefined;
}

/** The same edge run the other way. */
export function reverseEdge(edge: ResolvedEdge): ResolvedEdge {
  switch (edge.kind) {
    case "free":
      return { kind: "free", pieces: edge.pieces.toReversed().map(reverseCubic) };
    case "stretch":
      return { ...edge, pieces: edge.pieces.toReversed().map(reversePiece) };
    case "wing":
    case "closing":
      return { ...edge, isReversed: !edge.isReversed };
  }
}

/** The image of an edge across the centre line. */
function mirrorEdge(edge: ResolvedEdge): ResolvedEdge {
  const other = (hand: "right" | "left") => (hand === "right" ? "left" : "right");
  switch (edge.kind) {
    case "free":
      return {
        kind: "free",
        pieces: edge.pieces.map(({ plan, height }) => ({ plan: planOf(mirrorPiece(plan), plan), height })),
      };
    case "stretch":
      return { ...edge, hand: other(edge.hand), pieces: edge.pieces.map(mirrorPiece) };
    case "wing":
    case "closing":
      return { ...edge, hand: other(edge.hand) };
  }
}

/** t runs backward: c(1 − t). */
function reverseCubic({ plan, height: [a, b, c, d] }: SpaceCubic): SpaceCubic {
  return {
    plan: planOf(reversePiece(plan), plan),
    height: [a + b + c + d, -b - 2 * c - 3 * d, c + 3 * d, -d],
  };
}

/** Reversing and mirroring keep a piece's kind; its type does not say so. */
const planOf = (piece: CurvePiece, same: SpaceCubic["plan"]): SpaceCubic["plan"] =>
  piece.kind === "arc" ? same : piece;

/** The pieces of an edge in plan; undefined where only later stages know where it runs. */
export function planOfEdge(edge: ResolvedEdge): readonly CurvePiece[] | undefined {
  if (edge.kind === "free") return edge.pieces.map(({ plan }) => plan);
  return edge.kind === "stretch" ? edge.pieces : undefined;
}

/** Whether the closing edges get shorter by turning the second edge round. */
function runsAgainst(first: ResolvedEdge, second: ResolvedEdge): boolean {
  const [a, b] = [planOfEdge(first), planOfEdge(second)];
  if (!a || !b) return false;
  const [a0, a1, b0, b1] = [
    startOfPiece(at(a, 0)),
    endOfPiece(at(a, -1)),
    startOfPiece(at(b, 0)),
    endOfPiece(at(b, -1)),
  ];
  return distance2(a0, b1) + distance2(a1, b0) < distance2(a0, b0) + distance2(a1, b1);
}

/** First edge, closing edge, second edge backward, closing edge. */
function outlineInPlan({ first, second }: TransitionEdges): Curve | undefined {
  const [a, b] = [planOfEdge(first), planOfEdge(reverseEdge(second))];
  if (!a || !b) return undefined;
  const [firstStart, firstEnd, secondEnd, secondStart] = TRANSITION_NODES;
  const named = (pieces: readonly CurvePiece[], edgeId: string, ends: readonly [string, string]) =>
    pieces.map((piece, i) => ({
      ...piece,
      edgeId,
      ...(i === 0 ? { startNodeId: ends[0] } : {}),
      ...(i === pieces.length - 1 ? { endNodeId: ends[1] } : {}),
    }));
  const closing = (
    edgeId: string,
    from: CurvePiece,
    to: CurvePiece,
    ends: readonly [string, string],
  ): readonly CurvePiece[] => {
    const [p, q] = [endOfPiece(from), startOfPiece(to)];
    if (distance2(p, q) < COINCIDENT_POINTS_MM) return [];
    return [{ kind: "line", edgeId, from: p, to: q, startNodeId: ends[0], endNodeId: ends[1] }];
  };
  return toCurve(
    [
      ...named(a, "first", [firstStart, firstEnd]),
      ...closing("end", at(a, -1), at(b, 0), [firstEnd, secondEnd]),
      ...named(b, "second", [secondEnd, secondStart]),
      ...closing("start", at(b, -1), at(a, 0), [secondStart, firstStart]),
    ],
    true,
  );
}
