import { crossingParameters, pieceLengthMm, pointOnPiece } from "../../../core/curves/index.ts";
import { roundTo } from "../../../core/foundation/index.ts";
import type { Command, Fence, LineRef } from "../../../core/project/index.ts";
import { newId, takenIds } from "../new-id.ts";
import { findLine, type SceneLine } from "../scene.ts";
import type { ToolContext } from "../types.ts";

/** Where a fence is cut at a station, and how far below its sheet its lower edge shall be there. */
export interface WantedDepth {
  readonly fenceId: string;
  readonly xMm: number;
  readonly yMm: number;
  /** Height of the air side over the fence there. */
  readonly airZMm: number;
  readonly depthMm: number;
}

/** A node so near the station is the one that is set; another would lie too close to it. */
const SAME_STATION_MM = 1;
const DECIMALS = 3;
/** A fence has some depth. */
const LEAST_DEPTH_MM = 1;

/**
 * The commands that set a fence's depth at a station: its node there is moved, or one is put in first, so that the lower
 * edge elsewhere stays where it was. None where the fence does not come by.
 */
export function depthAtStation(
  { project, scene }: Pick<ToolContext, "project" | "scene">,
  wanted: WantedDepth,
): readonly Command[] {
  const fence = project.items.find(({ id }) => id === wanted.fenceId);
  if (fence?.kind !== "fence") return [];
  const depthMm = roundTo(Math.max(LEAST_DEPTH_MM, wanted.depthMm), DECIMALS);
  const line: LineRef = { of: "lower-edge", itemId: fence.id };
  const { lowerEdge } = fence;
  if (lowerEdge.kind === "depths") {
    const alongMm = alongAt(findLine(scene, { of: "item", itemId: fence.id }), wanted);
    return alongMm === undefined
      ? []
      : setDepth({ ...fence, lowerEdge }, alongMm, depthMm, takenIds(project, line));
  }
  const zMm = roundTo(wanted.airZMm - depthMm, DECIMALS);
  const near = lowerEdge.nodes.find(({ x }) => Math.abs(x - wanted.xMm) <= SAME_STATION_MM);
  if (near) return [{ kind: "move-node", line, nodeId: near.id, to: [near.x, zMm] }];
  const place = placeOnLowerEdge(findLine(scene, line), wanted.xMm);
  if (!place) return [];
  const newNodeId = newId("n", takenIds(project, line));
  return [
    { kind: "split-segment", line, ...place, newNodeId },
    { kind: "move-node", line, nodeId: newNodeId, to: [wanted.xMm, zMm] },
  ];
}

type DepthFence = Fence & { readonly lowerEdge: Extract<Fence["lowerEdge"], { kind: "depths" }> };

function setDepth(
  { id: itemId, lowerEdge }: DepthFence,
  alongMm: number,
  depthMm: number,
  taken: ReturnType<typeof takenIds>,
): readonly Command[] {
  const line: LineRef = { of: "lower-edge", itemId };
  const near = lowerEdge.nodes.find((node) => Math.abs(node.alongMm - alongMm) <= SAME_STATION_MM);
  if (near) return [{ kind: "move-node", line, nodeId: near.id, to: [near.alongMm, depthMm] }];
  const node = { id: newId("d", taken), alongMm: roundTo(alongMm, DECIMALS), depthMm };
  const nodes = [...lowerEdge.nodes, node].sort((a, b) => a.alongMm - b.alongMm);
  return [{ kind: "change-fence", itemId, changes: { lowerEdge: { kind: "depths", nodes } } }];
}

/** The segment of a lower edge that passes a station, and where on it. */
function placeOnLowerEdge(line: SceneLine | undefined, xMm: number) {
  for (const edge of line?.edges ?? []) {
    if (edge.ends) {
      const [from, to] = edge.ends;
      const t = (xMm - from[0]) / (to[0] - from[0]);
      if (t > 0 && t < 1) return { afterNodeId: edge.edgeId, t };
      continue;
    }
    for (const { piece } of edge.stretches) {
      const t = crossingParameters(piece, [1, 0], xMm)[0];
      if (t !== undefined) return { afterNodeId: edge.edgeId, t };
    }
  }
  return undefined;
}

/** The length along a fence's line to where it passes a station nearest to y. */
function alongAt(line: SceneLine | undefined, { xMm, yMm }: WantedDepth): number | undefined {
  let startMm = 0;
  let best: { readonly alongMm: number; readonly offMm: number } | undefined;
  for (const { piece } of line?.edges.flatMap((edge) => edge.stretches) ?? []) {
    for (const t of crossingParameters(piece, [1, 0], xMm)) {
      const offMm = Math.abs(pointOnPiece(piece, t)[1] - yMm);
      if (!best || offMm < best.offMm) best = { alongMm: startMm + pieceLengthMm(piece, 0, t), offMm };
    }
    startMm += pieceLengthMm(piece);
  }
  return best?.alongMm;
}
