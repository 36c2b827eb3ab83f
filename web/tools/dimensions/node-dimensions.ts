import { sayNode, type Vec2 } from "../../../core/foundation/index.ts";
import type { SceneLine } from "../scene.ts";
import type { ToolContext } from "../types.ts";
import type { Dimension } from "./dimension.ts";
import { moveEdit } from "./move-edit.ts";

/** Where the chosen node lies: from station 0, and from the centre line or from the ground. */
export function nodeDimensions(line: SceneLine, nodeId: string, context: ToolContext): readonly Dimension[] {
  const node = line.nodes.find((other) => other.nodeId === nodeId);
  if (!node) return [];
  const [across, up] = node.at;
  const inPlan = line.view === "plan";
  const axis = (
    key: string,
    from: Vec2,
    outward: Vec2,
    word: string,
    to: (valueMm: number) => Vec2,
  ): Dimension => ({
    id: `${key}/${nodeId}`,
    view: line.view,
    kind: "axis",
    from,
    to: node.at,
    outward,
    valueMm: key === "x" ? across : up,
    word: `${word} of ${sayNode(nodeId)}`,
    moves: `Moves ${sayNode(nodeId)}; the other nodes stay.`,
    edit: (valueMm) => moveEdit(context, line, nodeId, to(valueMm)),
  });
  return [
    axis("x", [0, up], [0, 1], "x from station 0", (x) => [x, up]),
    axis(
      inPlan ? "y" : "z",
      [across, 0],
      [1, 0],
      inPlan ? "y from the centre line" : "height over the ground",
      (v) => [across, v],
    ),
  ];
}
