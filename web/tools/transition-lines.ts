import { type Curve, type CurvePiece, compileSpacePath, type SpaceCubic } from "../../core/curves/index.ts";
import { LARGEST_COORDINATE_MM } from "../../core/foundation/index.ts";
import { nameOfItem, type SpaceNode, type Transition } from "../../core/project/index.ts";
import type { DrawingView } from "./drawing-view.ts";
import { elementsOfEdge } from "./elements-of-edge.ts";
import type { SceneEdge, SceneLine } from "./scene.ts";
import { derivedEdge, sceneEdges, sceneNode } from "./scene-edges.ts";

/**
 * The lines of a transition: its free edges in plan and side view, with their nodes, then its outline in plan. That
 * follows from its two edges; nothing of it can be grabbed.
 */
export function transitionLines(item: Transition, outline: Curve | undefined): readonly SceneLine[] {
  const sides = ["first", "second"] as const;
  const free = sides.flatMap((side) => {
    const edge = item[side];
    return edge.kind === "free" ? freeEdgeLines(item, side, edge.nodes) : [];
  });
  return [...free, outlineOf(item, outline)];
}

function freeEdgeLines(
  item: Transition,
  side: "first" | "second",
  nodes: readonly SpaceNode[],
): readonly SceneLine[] {
  const compiled = nodes.every(isSensible) ? compileSpacePath(nodes) : undefined;
  return (["plan", "side"] as const).map((view): SceneLine => {
    const elements = elementsOfEdge(nodes, view);
    const drawn = elements.map((element, index) =>
      sceneNode(
        element,
        "y" in element ? [element.x, element.y] : [element.x, element.z],
        elements[index - 1],
      ),
    );
    const pieces = compiled?.ok ? compiled.value.map((piece) => seenFrom(piece, view)) : undefined;
    return {
      line: { of: "edge", itemId: item.id, side, view },
      view,
      kind: "free-edge",
      name: `the ${side} edge of ${nameOfItem(item)}`,
      closed: false,
      nodes: drawn,
      ...sceneEdges(elements, drawn, false, pieces && { pieces }),
    };
  });
}

/** A slip of the keyboard is named elsewhere; no curve is drawn through it. */
const isSensible = ({ x, y, z, radiusMm = 0, knotSpacingMm = 1 }: SpaceNode): boolean =>
  [x, y, z, radiusMm, knotSpacingMm].every((value) => Math.abs(value) <= LARGEST_COORDINATE_MM);

/** A piece in space as one view sees it. */
function seenFrom({ plan, height }: SpaceCubic, view: DrawingView): CurvePiece {
  if (view === "plan") return plan;
  if (plan.kind === "cubic") return { ...plan, second: height };
  const endZ = height[0] + height[1] + height[2] + height[3];
  return { ...plan, from: [plan.from[0], height[0]], to: [plan.to[0], endZ] };
}

function outlineOf(item: Transition, curve: Curve | undefined): SceneLine {
  return {
    line: { of: "item", itemId: item.id },
    view: "plan",
    kind: "transition",
    name: nameOfItem(item),
    closed: true,
    nodes: [],
    edges: curve ? edgesOf(curve) : [],
    broken: curve === undefined,
    ...(isAcross(item) ? { isWhole: true } : {}),
  };
}

/** An edge on the left half makes a transition one that spans the centre line. */
const isAcross = ({ first, second }: Transition): boolean =>
  [first, second].some((edge) => edge.kind === "stretch" && edge.edge.hand === "left");

/** The edges of an outline that is not drawn itself, in the order of its curve. */
function edgesOf({ pieces }: Curve): readonly SceneEdge[] {
  const ids = [...new Set(pieces.map(({ edgeId }) => edgeId))];
  return ids.map((edgeId) =>
    derivedEdge(
      edgeId,
      pieces.filter((piece) => piece.edgeId === edgeId),
    ),
  );
}
