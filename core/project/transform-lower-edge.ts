import { type Motion, stretchOf } from "./motion.ts";
import type { Fence, SideNode } from "./schema.ts";
import { changedAngles } from "./turned-angles.ts";

/** The lower edge of a fence whose line has changed: under the same shares of its extent in x as before. */
export const lowerEdgeUnderLine = (fence: Fence, old: Fence): Fence["lowerEdge"] =>
  lowerEdgeOf(fence, old, { kind: "turn", about: { x: 0, y: 0 }, angleRad: 0 });

/** The lower edge stands under the same shares of its line's extent in x as before, at the same heights. */
export function lowerEdgeOf(fence: Fence, old: Fence, motion: Motion): Fence["lowerEdge"] {
  const edge = fence.lowerEdge;
  if (edge.kind === "depths") {
    const factor = stretchOf(motion);
    if (factor === 1) return edge;
    return { ...edge, nodes: edge.nodes.map((node) => ({ ...node, alongMm: node.alongMm * factor })) };
  }
  const byMm = motion.kind === "move" ? motion.byMm.z : 0;
  const ends = endsInX(old);
  const newEnds = endsInX(fence);
  if (!ends || !newEnds) return edge;
  const span = ends[1] - ends[0];
  const toX = (x: number) =>
    motion.kind === "move"
      ? x + newEnds[0] - ends[0]
      : span === 0
        ? x + newEnds[0] - ends[0]
        : newEnds[0] + ((x - ends[0]) * (newEnds[1] - newEnds[0])) / span;
  const isTurnedBack = (newEnds[1] - newEnds[0]) * span < 0;
  const stretch = span === 0 ? 1 : Math.abs((newEnds[1] - newEnds[0]) / span);
  return {
    ...edge,
    nodes: edge.nodes.map((node) =>
      withSideAngles({ ...node, x: toX(node.x), z: node.z + byMm }, isTurnedBack, stretch),
    ),
  };
}

function endsInX(fence: Fence): readonly [number, number] | undefined {
  const { elements } = fence.line;
  const [first, last] = [elements[0], elements.at(-1)];
  return first?.kind === "node" && last?.kind === "node" ? [first.x, last.x] : undefined;
}

/** Typed directions of a lower edge that is turned back in x or drawn out along it. */
function withSideAngles(node: SideNode, isTurnedBack: boolean, stretch: number): SideNode {
  if (!isTurnedBack && Math.abs(stretch - 1) < 1e-12) return node;
  const { knotSpacingMm, ...rest } = node;
  return changedAngles(rest, (angleRad) =>
    Math.atan2(Math.sin(angleRad), Math.cos(angleRad) * stretch * (isTurnedBack ? -1 : 1)),
  );
}
