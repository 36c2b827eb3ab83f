import { ON_CENTRE_LINE_MM, roundTo, type Vec2 } from "../../../core/foundation/index.ts";
import type { SceneLine } from "../scene.ts";
import { moveNodeCommands } from "../select/move-node-commands.ts";
import type { ToolContext } from "../types.ts";
import { carryOut, type DimensionEdit, refuse } from "./dimension.ts";

/** Decimals of a mm that a computed place keeps. */
const DECIMALS = 6;

/** Moves a node, unless that takes it over the centre line of a mirrored tray. */
export function moveEdit(context: ToolContext, line: SceneLine, nodeId: string, to: Vec2): DimensionEdit {
  const isOver = context.scene.mirrored && line.view === "plan" && to[1] < -ON_CENTRE_LINE_MM;
  if (isOver) return refuse("That would take the node over the centre line.");
  const place: Vec2 = [roundTo(to[0], DECIMALS), roundTo(to[1], DECIMALS)];
  return carryOut(moveNodeCommands(context.project, line.line, nodeId, place));
}
