import { compilePath, type PathNode } from "../../core/curves/index.ts";
import type { Vec2 } from "../../core/foundation/index.ts";
import { type Draft, flattenForScreen } from "../tools/index.ts";

/**
 * The points of a line that is being drawn: those that are set down, and those from the last node to where the
 * pointer is. Curved segments run as they will when it is done; straight ones stand in where that cannot be.
 */
export function draftPoints({ nodes, pointer }: Draft): {
  readonly set: readonly Vec2[];
  readonly next: readonly Vec2[];
} {
  const all = [
    ...nodes.map((node) => ({ at: node.at, next: node.next })),
    ...(pointer ? [{ at: pointer, next: "line" as const }] : []),
  ];
  const lastSet = nodes.length - 1;
  const straight = {
    set: nodes.map((node) => node.at),
    next: pointer && nodes[lastSet] ? [nodes[lastSet].at, pointer] : [],
  };
  if (!nodes.some((node) => node.next === "curve") || all.length < 2) return straight;
  const elements = all.map(
    (node, index): PathNode => ({ kind: "node", id: String(index), at: node.at, next: node.next }),
  );
  const compiled = compilePath({ closed: false, elements });
  if (!compiled.ok) return straight;
  const pointsWhere = (belongs: (edgeId: string) => boolean) =>
    compiled.value.pieces.flatMap((piece) => (belongs(piece.edgeId) ? flattenForScreen(piece).points : []));
  return {
    set: pointsWhere((edgeId) => Number(edgeId) < lastSet),
    next: pointsWhere((edgeId) => Number(edgeId) >= lastSet),
  };
}
