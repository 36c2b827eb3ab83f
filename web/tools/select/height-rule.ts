import { assertNever, sayNode } from "../../../core/foundation/index.ts";
import type { LineRef } from "../../../core/project/index.ts";
import { findLine, inView } from "../scene.ts";
import type { ToolContext } from "../types.ts";

/**
 * What becomes of a node's height while it is dragged in plan, and of its place while it is dragged in the side view: the
 * stated rule, in a sentence.
 */
export function heightRule(context: ToolContext, line: LineRef, nodeId: string): string {
  switch (line.of) {
    case "item":
      return ruleOfItem(context, line.itemId);
    case "opening":
      return "The opening is cut through whatever lies there.";
    case "profile":
      return "All sections over this profile follow.";
    case "lower-edge":
      return "It keeps under the fence's line; only station and height change.";
    case "edge":
      return ruleOfEdge(context, line, nodeId);
    default:
      return assertNever(line);
  }
}

function ruleOfItem({ project, lengths }: ToolContext, itemId: string): string {
  const item = project.items.find(({ id }) => id === itemId);
  switch (item?.kind) {
    case "section":
      return "Its height is what the profile has there.";
    case "plate":
      return `It stays at the plate's height, z ${lengths.show(item.zMm)}.`;
    case "fence":
      return item.lowerEdge.kind === "heights"
        ? "The lower edge keeps its heights by station; an end takes its own along."
        : "The lower edge keeps its depths by length along the fence.";
    default:
      return "";
  }
}

/** A node in space: what the other view shows of it stays. */
function ruleOfEdge(
  { scene, lengths }: ToolContext,
  line: Extract<LineRef, { of: "edge" }>,
  nodeId: string,
): string {
  const other = inView(line, line.view === "plan" ? "side" : "plan");
  const at = findLine(scene, other)?.nodes.find((node) => node.nodeId === nodeId)?.at;
  if (!at) return "";
  return `${sayNode(nodeId)} keeps its ${line.view === "plan" ? "height, z" : "y"} ${lengths.show(at[1])}.`;
}
