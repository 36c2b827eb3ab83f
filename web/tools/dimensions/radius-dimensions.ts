import { frameOnPiece } from "../../../core/curves/index.ts";
import { nodeLabel, scale2, subtract2, unit2 } from "../../../core/foundation/index.ts";
import { circleOf } from "../opening/index.ts";
import type { SceneEdge, SceneLine } from "../scene.ts";
import type { ToolContext } from "../types.ts";
import { carryOut, type Dimension, refuse } from "./dimension.ts";
import { moveEdit } from "./move-edit.ts";

/** The radii of rounded corners; of a circle the one that all its corners share. */
export function radiusDimensions(
  line: SceneLine,
  edges: readonly SceneEdge[],
  context: ToolContext,
): readonly Dimension[] {
  const all = edges.flatMap((edge) =>
    edge.stretches.flatMap(({ piece }): readonly Dimension[] => {
      // A rounded corner is two arcs that meet in its node: the second stands for both.
      const nodeId = piece.kind === "arc" ? piece.startNodeId : undefined;
      if (piece.kind !== "arc" || nodeId === undefined) return [];
      const { at } = frameOnPiece(piece, 0);
      return [
        {
          id: `radius/${nodeId}`,
          view: line.view,
          kind: "radius",
          from: piece.centre,
          to: at,
          middle: at,
          outward: scale2(unit2(subtract2(at, piece.centre)), -1),
          valueMm: piece.radiusMm,
          word: `radius at node ${nodeLabel(nodeId)}`,
          moves: "Changes the radius; the corner stays.",
          edit: (radiusMm) =>
            radiusMm < 0
              ? refuse("A radius is 0 or more.")
              : carryOut([
                  {
                    kind: "change-node",
                    line: line.line,
                    nodeId,
                    changes: { radiusMm: radiusMm === 0 ? undefined : radiusMm },
                  },
                ]),
        },
      ];
    }),
  );
  return circleRadius(line, context, all[0]) ?? all;
}

function circleRadius(
  line: SceneLine,
  context: ToolContext,
  first: Dimension | undefined,
): readonly Dimension[] | undefined {
  const { line: ref } = line;
  if (ref.of !== "opening" || !first) return undefined;
  const opening = context.project.openings.find(({ id }) => id === ref.openingId);
  const circle = opening && circleOf(opening.outline);
  const corner = line.nodes[0];
  if (!circle || !corner) return undefined;
  const [x, y] = circle.centre;
  return [
    {
      ...first,
      word: "radius of the circle",
      moves: "Changes the circle about its centre.",
      edit: (radiusMm) =>
        radiusMm > 0
          ? moveEdit(context, line, corner.nodeId, [x + radiusMm, y + (circle.isHalf ? 0 : radiusMm)])
          : refuse("A radius is more than 0."),
    },
  ];
}
