import { at, distanceFlat } from "../foundation/index.ts";
import { shortestBetween } from "./nearest-lines.ts";
import type { FlatEdge, FlatLoop, OpeningWeb, PartEdge } from "./types.ts";

/**
 * For each opening of a part the narrowest foam that it leaves: the shortest straight on the flat pattern to an edge,
 * a joint or another opening. An edge that the opening runs into is no neighbour but its continuation, and an opening
 * that is cut twice into a whole sheet counts as two.
 */
export function openingWebs(
  loops: readonly FlatLoop[],
  partEdges: readonly PartEdge[],
): readonly OpeningWeb[] {
  const openingIds = new Map(
    partEdges.flatMap(({ edgeId, opening }) => (opening ? [[edgeId, opening.id]] : [])),
  );
  // The two images of one opening have two names.
  const keyOf = (edge: FlatEdge): string | undefined => {
    const id = openingIds.get(edge.edgeId);
    return id === undefined ? undefined : `${id} ${edge.edgeId.endsWith(".left") ? "left" : ""}`;
  };
  const edges = loops.flatMap((loop) => loop.edges);
  const keys = [...new Set(edges.flatMap((edge) => keyOf(edge) ?? []))].sort();
  return keys.flatMap((key): OpeningWeb[] => {
    const own = edges.filter((edge) => keyOf(edge) === key);
    const others = edges.filter((edge) => keyOf(edge) !== key && !own.some((one) => runsInto(one, edge)));
    const shortest = shortestBetween(
      own.map(({ points }) => points),
      others.map(({ points }) => points),
    );
    if (!shortest) return [];
    const { lengthMm: webMm, from, to } = shortest;
    const [edge, other] = [at(own, shortest.fromLine), at(others, shortest.toLine)];
    const openingId = openingIds.get(edge.edgeId) ?? "";
    return [
      { openingId, name: edge.name, otherName: other.name, otherEdgeId: other.edgeId, webMm, from, to },
    ];
  });
}

/** Edges whose ends lie this near each other follow each other, mm. */
const JOINED_MM = 1e-3;

function runsInto(a: FlatEdge, b: FlatEdge): boolean {
  const [endsA, endsB] = [a, b].map(({ points }) => [at(points, 0), at(points, -1)]);
  return (endsA ?? []).some((p) => (endsB ?? []).some((q) => distanceFlat(p, q) < JOINED_MM));
}
