import type { FlatEdge } from "../patterns/index.ts";
import { contactsBetween } from "./divide-transition.ts";
import type { NamedPiece } from "./seams-between.ts";
import type { Seam } from "./types.ts";

/** The seams of a transition's pieces, and the pieces with their seam edges named after them. */
export function seamsOfTransition(
  partId: string,
  pieces: readonly NamedPiece[],
): { readonly seams: readonly Seam[]; readonly pieces: readonly NamedPiece[] } {
  const names = new Map<FlatEdge, string>();
  const counts = new Map<string, number>();
  const seams = contactsBetween(pieces).map(({ pieceIds, edges, ...rest }): Seam => {
    const pair = pieceIds.join("/");
    const count = (counts.get(pair) ?? 0) + 1;
    counts.set(pair, count);
    const id = count === 1 ? pair : `${pair}.${count}`;
    for (const edge of edges) names.set(edge, id);
    return { id, partId, stripIds: pieceIds, ...rest };
  });
  const rename = (edge: FlatEdge): FlatEdge => {
    const id = names.get(edge);
    return id === undefined ? edge : { ...edge, edgeId: `seam:${id}`, name: `seam ${id}` };
  };
  return {
    seams,
    pieces: pieces.map(({ id, loops }) => ({
      id,
      loops: loops.map(({ edges }) => ({ edges: edges.map(rename) })),
    })),
  };
}
