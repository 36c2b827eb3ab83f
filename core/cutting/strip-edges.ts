import { at } from "../foundation/index.ts";
import type { FlatEdge, Part, PartEdge } from "../patterns/index.ts";
import type { Island } from "./group-islands.ts";
import { lengthOfEdgeMm } from "./loop-measures.ts";

/**
 * The edges of a strip in the order of its loops. Flat lengths come from the points; drawn and space lengths are
 * the strip's share of the part's edge by flat length, and bevels are read off between the part's two ends.
 * Seams are cut square and are as long in space as on the flat.
 */
export function stripEdges(loops: Island, part: Part): PartEdge[] {
  const wholes = new Map(part.edges.map((edge) => [edge.edgeId, edge]));
  return loops.flatMap((loop) => loop.edges.map((edge) => stripEdge(edge, wholes.get(edge.edgeId), part)));
}

function stripEdge(edge: FlatEdge, whole: PartEdge | undefined, part: Part): PartEdge {
  const { edgeId, name, role } = edge;
  const flatLengthMm = lengthOfEdgeMm(edge);
  if (whole === undefined || whole.role !== role || !(whole.flatLengthMm > 0)) {
    const same = { drawnLengthMm: flatLengthMm, spaceLengthMm: flatLengthMm, flatLengthMm };
    return { edgeId, name, role, ...same, bevelRad: [0, 0] };
  }
  const share = flatLengthMm / whole.flatLengthMm;
  const isWhole = Math.abs(share - 1) < 1e-9;
  return {
    edgeId,
    name,
    role,
    drawnLengthMm: isWhole ? whole.drawnLengthMm : whole.drawnLengthMm * share,
    spaceLengthMm: isWhole ? whole.spaceLengthMm : whole.spaceLengthMm * share,
    flatLengthMm,
    bevelRad: isWhole ? whole.bevelRad : bevelOfStretch(edge, whole, part),
  };
}

/** Bevels at both ends of a piece of an edge, in proportion to how far along the edge it starts and ends. */
function bevelOfStretch(edge: FlatEdge, whole: PartEdge, part: Part): readonly [number, number] {
  const [first, last] = whole.bevelRad;
  if (first === last) return whole.bevelRad;
  const from = shareAlong(edge, whole, part);
  const to = from + lengthOfEdgeMm(edge) / whole.flatLengthMm;
  return [first + (last - first) * from, first + (last - first) * to];
}

/** How far along the part's edge the first point of a piece lies, as a share of the edge's length. */
function shareAlong(edge: FlatEdge, whole: PartEdge, part: Part): number {
  const start = at(edge.points, 0);
  let best = { missMm: Number.POSITIVE_INFINITY, alongMm: 0 };
  let alongMm = 0;
  for (const loop of part.loops) {
    for (const candidate of loop.edges) {
      if (candidate.edgeId !== whole.edgeId || candidate.role !== whole.role) continue;
      for (let i = 1; i < candidate.points.length; i++) {
        const from = at(candidate.points, i - 1);
        const to = at(candidate.points, i);
        const lengthMm = Math.hypot(to.u - from.u, to.v - from.v);
        const fromStartMm = Math.hypot(start.u - from.u, start.v - from.v);
        const missMm = fromStartMm + Math.hypot(to.u - start.u, to.v - start.v) - lengthMm;
        if (missMm < best.missMm) best = { missMm, alongMm: alongMm + fromStartMm };
        alongMm += lengthMm;
      }
    }
  }
  return best.alongMm / whole.flatLengthMm;
}
