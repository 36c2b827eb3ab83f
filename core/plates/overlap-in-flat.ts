import { type CurvePiece, findSelfCrossings, toCurve } from "../curves/index.ts";
import { at } from "../foundation/index.ts";
import type { PlateEdge, PlateLoop } from "./types.ts";

/** A wing that lies over something else when the plate is laid flat, and what that is. */
export interface FlatOverlap {
  readonly placedWingId: string;
  readonly otherName: string;
}

/**
 * The first place where the flat outline crosses or touches itself; the later wing of the two is named, or the one
 * wing where the other edge is the base's. Undefined where one sheet gives it all.
 */
export function overlapInFlat(loops: readonly PlateLoop[]): FlatOverlap | undefined {
  for (const { edges } of loops) {
    for (const { edgeIds } of findSelfCrossings(toCurve(edges.flatMap(piecesOf), true))) {
      const [one, other] = edgeIds.map((index) => at(edges, Number(index)));
      const overlap = one && other && overlapOf(one, other);
      if (overlap) return overlap;
    }
  }
  return undefined;
}

/** The outline's chords as pieces, each labelled with the index of its edge. */
const piecesOf = ({ points }: PlateEdge, index: number): readonly CurvePiece[] =>
  points.slice(1).map((to, i) => {
    const from = at(points, i);
    return { kind: "line", edgeId: String(index), from: [from.u, from.v], to: [to.u, to.v] };
  });

function overlapOf(one: PlateEdge, other: PlateEdge): FlatOverlap | undefined {
  if (other.placedWingId !== undefined) return { placedWingId: other.placedWingId, otherName: one.name };
  if (one.placedWingId !== undefined) return { placedWingId: one.placedWingId, otherName: other.name };
  return undefined;
}
