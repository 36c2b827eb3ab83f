import { bracketedRoot, interpolate2, type Vec2 } from "../../../core/foundation/index.ts";
import { applyCommand, resolveLines } from "../../../core/project/index.ts";
import { findLine, type SceneEdge, type SceneLine, type SceneNode } from "../scene.ts";
import { sceneOf } from "../scene-lines.ts";
import type { ToolContext } from "../types.ts";
import { type DimensionEdit, refuse } from "./dimension.ts";
import { moveEdit } from "./move-edit.ts";
import { edgeLengthMm } from "./total-length.ts";

interface CurveEdge {
  readonly line: SceneLine;
  readonly edge: SceneEdge;
  readonly end: SceneNode;
  readonly from: Vec2;
}

/** The end node may go to a twentieth or to five times its distance. */
const LEAST_SHARE = 0.05;
const MOST_SHARE = 5;

/**
 * Moves the end node of a curve on the chord's own line until the curve is so long. The whole run of curves takes its new
 * shape at each try, so that what is typed is what comes out.
 */
export function stretchCurve(context: ToolContext, curve: CurveEdge, wantedMm: number): DimensionEdit {
  const { line, edge, end, from } = curve;
  const placeAt = (share: number) => interpolate2(from, end.at, share);
  const missAt = (share: number): number => {
    const edit = moveEdit(context, line, end.nodeId, placeAt(share));
    if (!edit.ok) return Number.NaN;
    const project = edit.commands.reduce(applyCommand, context.project);
    const moved = findLine(sceneOf(project, resolveLines(project)), line.line)?.edges.find(
      ({ edgeId }) => edgeId === edge.edgeId,
    );
    return moved ? edgeLengthMm(moved) - wantedMm : Number.NaN;
  };
  const [least, most] = [missAt(LEAST_SHARE), missAt(MOST_SHARE)];
  if (!(least < 0 && most > 0)) return refuse("No place of the end node on this line gives that length.");
  return moveEdit(context, line, end.nodeId, placeAt(bracketedRoot(missAt, LEAST_SHARE, MOST_SHARE)));
}
