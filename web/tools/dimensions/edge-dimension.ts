import {
  endOfPiece,
  frameOnPiece,
  middleOfPieces,
  nearestOnPiece,
  startOfPiece,
} from "../../../core/curves/index.ts";
import {
  add2,
  COINCIDENT_POINTS_MM,
  distance2,
  nodeLabel,
  sayNode,
  scale2,
  subtract2,
  unit2,
  type Vec2,
} from "../../../core/foundation/index.ts";
import type { SceneEdge, SceneLine, SceneNode } from "../scene.ts";
import type { ToolContext } from "../types.ts";
import type { Dimension } from "./dimension.ts";
import { moveEdit } from "./move-edit.ts";
import { outwardAt } from "./outward.ts";
import { stretchCurve } from "./stretch-curve.ts";
import { edgeLengthMm } from "./total-length.ts";

/** The length of an edge: of a straight one from node to node, of a curve along itself. Changing it moves its end node. */
export function edgeDimension(line: SceneLine, edge: SceneEdge, context: ToolContext): Dimension | undefined {
  const end = endNodeOf(line, edge);
  const word = `length of ${edge.name ?? `edge ${nodeLabel(edge.edgeId)}`}`;
  const shared = { id: `length/${edge.edgeId}`, view: line.view, word } as const;
  if (edge.ends) {
    const [from, to] = edge.ends;
    const along = unit2(subtract2(to, from));
    return {
      ...shared,
      kind: "straight",
      from,
      to,
      outward: outwardAt(line, [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2], along),
      valueMm: distance2(from, to),
      ...(end
        ? {
            moves: `Moves ${sayNode(end.nodeId)} along the edge; the other nodes stay.`,
            edit: (valueMm: number) =>
              valueMm > COINCIDENT_POINTS_MM
                ? moveEdit(context, line, end.nodeId, add2(from, scale2(along, valueMm)))
                : TOO_SHORT,
          }
        : {}),
    };
  }
  return ofCurve(line, edge, { ...shared, context, end });
}

const TOO_SHORT = { ok: false, why: "A length is more than 0." } as const;

interface OfCurve {
  readonly id: string;
  readonly view: SceneLine["view"];
  readonly word: string;
  readonly context: ToolContext;
  readonly end: SceneNode | undefined;
}

function ofCurve(
  line: SceneLine,
  edge: SceneEdge,
  { context, end, ...shared }: OfCurve,
): Dimension | undefined {
  const [first, last] = [edge.stretches[0], edge.stretches.at(-1)];
  const middlePiece = edge.stretches[Math.floor(edge.stretches.length / 2)]?.piece;
  const [from, to] = [first?.points[0], last?.points.at(-1)];
  if (!from || !to || !middlePiece || !first || !last) return undefined;
  const middle = middleOfPieces(inOrder(edge));
  const { t } = nearestOnPiece(middlePiece, middle);
  const valueMm = edgeLengthMm(edge);
  const isOwn = edge.kind === "curve" && end !== undefined;
  return {
    ...shared,
    kind: edge.stretches.every(({ piece }) => piece.kind === "line") ? "straight" : "arc",
    from,
    to,
    middle,
    outward: outwardAt(line, middle, frameOnPiece(middlePiece, t).tangent),
    valueMm,
    ...(isOwn
      ? {
          moves: `Moves ${sayNode(end.nodeId)} on the straight line from the edge's start; the other nodes stay.`,
          edit: (wantedMm: number) =>
            wantedMm > COINCIDENT_POINTS_MM
              ? stretchCurve(context, { line, edge, end, from }, wantedMm)
              : TOO_SHORT,
        }
      : {}),
  };
}

/** The pieces of an edge end to end, whichever way round they were compiled. */
function inOrder(edge: SceneEdge) {
  const pieces = edge.stretches.map(({ piece }) => piece);
  const [first, second] = pieces;
  if (!first || !second) return pieces;
  const meets = (a: Vec2, b: Vec2) => distance2(a, b) <= COINCIDENT_POINTS_MM;
  return meets(endOfPiece(first), startOfPiece(second)) ? pieces : [...pieces].reverse();
}

/** The node at the end of an edge that leaves a node; undefined where another line owns it. */
function endNodeOf(line: SceneLine, edge: SceneEdge): SceneNode | undefined {
  if (edge.kind !== "line" && edge.kind !== "curve") return undefined;
  const end = edge.ends?.[1] ?? edge.stretches.at(-1)?.points.at(-1);
  return (
    end &&
    line.nodes.find((node) => distance2(node.at, end) <= COINCIDENT_POINTS_MM && node.nodeId !== edge.edgeId)
  );
}
