import type { LineRef } from "../../../core/project/index.ts";
import { findLine, inView, ownerKey, type SceneLine } from "../scene.ts";
import { chosenEdgeId, chosenNodeId, lineOfSelection } from "../selected-line.ts";
import type { ToolContext } from "../types.ts";
import { depthDimensions } from "./depth-dimensions.ts";
import type { Dimension } from "./dimension.ts";
import { edgeDimension } from "./edge-dimension.ts";
import { nodeDimensions } from "./node-dimensions.ts";
import { radiusDimensions } from "./radius-dimensions.ts";

/** With more edges than these only those beside what is chosen are measured. */
const MOST_EDGES = 16;

/**
 * The dimensions of what is chosen: lengths of its edges and its radii; of a chosen node its place from station 0 and
 * from the centre line (or the ground), and the edges beside it; of a fence also its depths. None for several things.
 */
export function dimensionsOf(context: ToolContext): readonly Dimension[] {
  const ref = lineOfSelection(context.selection);
  if (!ref) return [];
  return [
    ...linesShown(context, ref).flatMap((line) => ofLine(line, context)),
    ...depthDimensions(context, ref),
  ];
}

/** The line itself; of a transition both of its free edges, in the view that was taken hold of. */
function linesShown({ scene }: ToolContext, ref: LineRef): readonly SceneLine[] {
  const line = findLine(scene, ref);
  if (line?.kind !== "transition") return line ? [line] : [];
  return scene.lines.filter(
    (other) => other.view === line.view && other !== line && ownerKey(other.line) === ownerKey(line.line),
  );
}

function ofLine(line: SceneLine, context: ToolContext): readonly Dimension[] {
  if (line.broken) return [];
  const nodeId = isTheChosenLine(line, context) ? chosenNodeId(context.selection) : undefined;
  const edgeId = chosenEdgeId(context.selection);
  const edges = line.edges.filter(
    (edge) =>
      line.edges.length <= MOST_EDGES || edge.edgeId === edgeId || isBeside(line, edge.edgeId, nodeId),
  );
  return [
    ...edges.flatMap((edge) => edgeDimension(line, edge, context) ?? []),
    ...radiusDimensions(line, edges, context),
    ...(nodeId === undefined ? [] : nodeDimensions(line, nodeId, context)),
  ];
}

function isTheChosenLine(line: SceneLine, { selection }: ToolContext): boolean {
  const ref = lineOfSelection(selection);
  return (
    ref !== undefined && ownerKey(ref) === ownerKey(line.line) && inView(ref, line.view).of === line.line.of
  );
}

function isBeside(line: SceneLine, edgeId: string, nodeId: string | undefined): boolean {
  if (nodeId === undefined) return false;
  const index = line.edges.findIndex((edge) => edge.edgeId === nodeId);
  return edgeId === nodeId || line.edges.at(index < 0 ? -1 : index - 1)?.edgeId === edgeId;
}
