import { pieceLengthMm } from "../../../core/curves/index.ts";
import { findLine, type SceneEdge } from "../scene.ts";
import { lineOfSelection } from "../selected-line.ts";
import type { ToolContext } from "../types.ts";

/** The length of an edge along itself, mm. */
export const edgeLengthMm = (edge: SceneEdge): number =>
  edge.stretches.reduce((sum, { piece }) => sum + pieceLengthMm(piece), 0);

/** The length of the whole line that is chosen, once round if it is closed; undefined where none is. */
export function totalLength({
  scene,
  selection,
}: Pick<ToolContext, "scene" | "selection">):
  | { readonly word: string; readonly valueMm: number }
  | undefined {
  const ref = lineOfSelection(selection);
  const line = ref && findLine(scene, ref);
  if (!line || line.broken || line.kind === "transition") return undefined;
  const valueMm = line.edges.reduce((sum, edge) => sum + edgeLengthMm(edge), 0);
  return { word: line.closed ? "once round" : "whole length", valueMm };
}
