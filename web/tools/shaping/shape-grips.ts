import {
  frameOnPiece,
  middleOfPieces,
  nearestOnPiece,
  type StraightCorner,
  startOfPiece,
} from "../../../core/curves/index.ts";
import { COINCIDENT_POINTS_MM, distance2, type Vec2 } from "../../../core/foundation/index.ts";
import type { LineRef } from "../../../core/project/index.ts";
import { outwardAt } from "../dimensions/outward.ts";
import type { DrawingView } from "../drawing-view.ts";
import { elementsOfLine } from "../elements-of-line.ts";
import { findLine, type SceneEdge, type SceneLine } from "../scene.ts";
import { chosenEdgeId, chosenNodeId, lineOfSelection } from "../selected-line.ts";
import type { ToolContext } from "../types.ts";

interface OnLine {
  readonly view: DrawingView;
  readonly line: LineRef;
}

/** The chosen edge, which may be made straight or curved: its middle, and the way out of its outline. */
export interface SegmentGrip extends OnLine {
  readonly kind: "line" | "curve";
  readonly edgeId: string;
  readonly at: Vec2;
  readonly outward: Vec2;
}

/** A corner between two straight edges, which may be rounded. */
export interface CornerGrip extends OnLine {
  readonly nodeId: string;
  /** Its lines, as far as other corners leave them. */
  readonly corner: StraightCorner;
  readonly radiusMm: number;
}

/** The end of a curve whose direction may be set, where it leaves a node or arrives there. */
export interface TangentGrip extends OnLine {
  readonly nodeId: string;
  readonly end: "in" | "out";
  readonly at: Vec2;
  /** Of travel, as it is now. */
  readonly directionRad: number;
  readonly isTyped: boolean;
}

export interface ShapeGrips {
  readonly segment: SegmentGrip | undefined;
  readonly corners: readonly CornerGrip[];
  readonly tangents: readonly TangentGrip[];
}

type Elements = ReturnType<typeof elementsOfLine>;

export const NO_GRIPS: ShapeGrips = { segment: undefined, corners: [], tangents: [] };

/** What the chosen edge or node can be shaped by, beside the node itself. */
export function shapeGripsOf({
  project,
  scene,
  selection,
}: Pick<ToolContext, "project" | "scene" | "selection">): ShapeGrips {
  const ref = lineOfSelection(selection);
  const line = ref && findLine(scene, ref);
  if (!line || line.broken) return NO_GRIPS;
  const edge = line.edges.find(({ edgeId }) => edgeId === chosenEdgeId(selection));
  const ends = edge ? [edge.edgeId, afterEdge(line, edge)] : [chosenNodeId(selection)];
  const nodeIds = ends.filter((id) => id !== undefined);
  // An edge in space has no corner or direction that one view shows truly.
  const isFlat = line.line.of !== "edge";
  const elements = elementsOfLine(project, line.line);
  return {
    segment: edge && segmentOf(line, edge),
    corners: isFlat ? nodeIds.flatMap((nodeId) => cornerOf(line, nodeId, elements) ?? []) : [],
    tangents: isFlat ? nodeIds.flatMap((nodeId) => tangentsOf(line, nodeId, elements)) : [],
  };
}

function segmentOf(line: SceneLine, edge: SceneEdge): SegmentGrip | undefined {
  if (edge.kind !== "line" && edge.kind !== "curve") return undefined;
  const at = middleOfPieces(edge.stretches.map(({ piece }) => piece));
  const piece = edge.stretches[Math.floor(edge.stretches.length / 2)]?.piece;
  if (!piece) return undefined;
  const along = frameOnPiece(piece, nearestOnPiece(piece, at).t).tangent;
  return {
    view: line.view,
    line: line.line,
    kind: edge.kind,
    edgeId: edge.edgeId,
    at,
    outward: outwardAt(line, at, along),
  };
}

const placeOf = (line: SceneLine, nodeId: string): Vec2 | undefined =>
  line.nodes.find((node) => node.nodeId === nodeId)?.at;

function afterEdge(line: SceneLine, edge: SceneEdge): string | undefined {
  const end = endOf(edge);
  return end && line.nodes.find(({ at, nodeId }) => nodeId !== edge.edgeId && isSame(at, end))?.nodeId;
}

const isSame = (a: Vec2, b: Vec2): boolean => distance2(a, b) <= COINCIDENT_POINTS_MM;
const endOf = (edge: SceneEdge): Vec2 | undefined => edge.ends?.[1] ?? edge.stretches.at(-1)?.points.at(-1);

/** The edges that arrive at a node and leave it. */
function edgesAt(line: SceneLine, nodeId: string) {
  const at = placeOf(line, nodeId);
  const leaving = line.edges.find(({ edgeId }) => edgeId === nodeId);
  const arriving =
    at && line.edges.find((edge) => edge !== leaving && isSame(endOf(edge) ?? [Number.NaN, 0], at));
  return { at, leaving, arriving };
}

function cornerOf(line: SceneLine, nodeId: string, elements: Elements): CornerGrip | undefined {
  const { at, leaving, arriving } = edgesAt(line, nodeId);
  if (!at || !leaving?.ends || !arriving?.ends) return undefined;
  // What another corner's arc has taken of the line is not there for this one.
  const [first, last] = [arriving.stretches[0], leaving.stretches.at(-1)];
  const before =
    first?.piece.kind === "arc" && arriving.stretches.length > 1 ? first.points.at(-1) : arriving.ends[0];
  const after = last?.piece.kind === "arc" && leaving.stretches.length > 1 ? last.points[0] : leaving.ends[1];
  if (!before || !after) return undefined;
  const node = elements.find(({ id }) => id === nodeId);
  return {
    view: line.view,
    line: line.line,
    nodeId,
    corner: { before, at, after },
    radiusMm: node?.kind === "node" ? (node.radiusMm ?? 0) : 0,
  };
}

/** Directions count where a run of curves ends and no line gives its own. */
function tangentsOf(line: SceneLine, nodeId: string, elements: Elements): readonly TangentGrip[] {
  const node = elements.find(({ id }) => id === nodeId);
  const { at, leaving, arriving } = edgesAt(line, nodeId);
  if (node?.kind !== "node" || !at) return [];
  const isBetween = leaving?.kind === "curve" && arriving?.kind === "curve";
  const counts = isBetween ? node.meets === "corner" : node.meets !== "smooth";
  if (!counts) return [];
  const shared = { view: line.view, line: line.line, nodeId, at };
  const out = leaving?.kind === "curve" ? directionAt(leaving, "start") : undefined;
  const into = arriving?.kind === "curve" ? directionAt(arriving, "end") : undefined;
  return [
    ...(into === undefined
      ? []
      : [{ ...shared, end: "in", directionRad: into, isTyped: node.tangentInRad !== undefined } as const]),
    ...(out === undefined
      ? []
      : [{ ...shared, end: "out", directionRad: out, isTyped: node.tangentOutRad !== undefined } as const]),
  ];
}

/** The direction of travel at an end of an edge, in the line's drawn direction. */
function directionAt(edge: SceneEdge, end: "start" | "end"): number | undefined {
  const stretch = end === "start" ? edge.stretches[0] : edge.stretches.at(-1);
  const drawnStart = stretch?.points[0];
  if (!stretch || !drawnStart) return undefined;
  const isTurned = !isSame(startOfPiece(stretch.piece), drawnStart);
  const { tangent } = frameOnPiece(stretch.piece, (end === "start") === isTurned ? 1 : 0);
  const sign = isTurned ? -1 : 1;
  return Math.atan2(sign * tangent[1], sign * tangent[0]);
}
