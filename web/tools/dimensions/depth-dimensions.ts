import { crossingParameters, frameAtLength, pointOnPiece, toCurve } from "../../../core/curves/index.ts";
import { sayNode, type Vec2 } from "../../../core/foundation/index.ts";
import type { Fence, LineRef } from "../../../core/project/index.ts";
import { findLine, type SceneLine } from "../scene.ts";
import type { ToolContext } from "../types.ts";
import { carryOut, type Dimension, refuse } from "./dimension.ts";

/** More depths than these are left to the table. */
const MOST_DEPTHS = 10;

/** How far a chosen fence hangs below the sheet at the nodes of its lower edge, in the side view. */
export function depthDimensions(context: ToolContext, ref: LineRef): readonly Dimension[] {
  if (ref.of !== "item" && ref.of !== "lower-edge") return [];
  const fence = context.project.items.find(({ id }) => id === ref.itemId);
  const line = findLine(context.scene, { of: "item", itemId: ref.itemId });
  if (fence?.kind !== "fence" || !line || line.broken) return [];
  return feetOf(fence, line)
    .slice(0, MOST_DEPTHS)
    .flatMap((foot) => depthAt(fence, foot, context) ?? []);
}

/** A node of the lower edge: where it hangs in plan, and its height or depth. */
interface Foot {
  readonly nodeId: string;
  readonly over: Vec2;
  readonly zMm?: number;
  readonly along?: { readonly alongMm: number; readonly depthMm: number };
}

function feetOf({ lowerEdge }: Fence, line: SceneLine): readonly Foot[] {
  const pieces = line.edges.flatMap((edge) => edge.stretches.map(({ piece }) => piece));
  if (lowerEdge.kind === "depths") {
    if (pieces.length === 0) return [];
    const curve = toCurve(pieces, false);
    return lowerEdge.nodes.map(({ id, alongMm, depthMm }) => ({
      nodeId: id,
      over: frameAtLength(curve, alongMm).at,
      along: { alongMm, depthMm },
    }));
  }
  return lowerEdge.nodes.flatMap(({ id, x, z }): readonly Foot[] => {
    const piece = pieces.find((one) => crossingParameters(one, [1, 0], x).length > 0);
    const t = piece && crossingParameters(piece, [1, 0], x)[0];
    return piece && t !== undefined ? [{ nodeId: id, over: pointOnPiece(piece, t), zMm: z }] : [];
  });
}

function depthAt(fence: Fence, foot: Foot, { heightOver }: ToolContext): Dimension | undefined {
  const zMm = heightOver(foot.over);
  if (zMm === undefined) return undefined;
  const [x] = foot.over;
  const line: LineRef = { of: "lower-edge", itemId: fence.id };
  const depthMm = foot.along?.depthMm ?? zMm - (foot.zMm ?? zMm);
  const to = (valueMm: number): Vec2 => (foot.along ? [foot.along.alongMm, valueMm] : [x, zMm - valueMm]);
  return {
    id: `depth/${foot.nodeId}`,
    view: "side",
    kind: "straight",
    from: [x, zMm],
    to: [x, zMm - depthMm],
    outward: [1, 0],
    valueMm: depthMm,
    word: `depth of ${fence.name} at ${sayNode(foot.nodeId)}`,
    moves: `Moves ${sayNode(foot.nodeId)} of the lower edge straight up or down.`,
    edit: (valueMm) =>
      valueMm > 0
        ? carryOut([{ kind: "move-node", line, nodeId: foot.nodeId, to: to(valueMm) }])
        : refuse("A depth is more than 0."),
  };
}
