import { at } from "../foundation/index.ts";
import type { FlatEdge, Part, PartEdge } from "../patterns/index.ts";
import { plankBevelAt } from "./divide-planks.ts";
import type { Island } from "./group-islands.ts";
import { lengthOfEdgeMm } from "./loop-measures.ts";

/**
 * The edges of a strip in the order of its loops. Flat lengths come from the points; drawn and space lengths are
 * the strip's share of the part's edge by flat length, and bevels are read off between the part's two ends.
 * Seams are cut square, but for those between planks, and are as long in space as on the flat.
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
    return { edgeId, name, role, ...same, ...bevelsOfSeam(edge, part, flatLengthMm) };
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
    ...(whole.letIn && { letIn: whole.letIn }),
    ...(whole.opening && { opening: whole.opening }),
    ...(isWhole ? { bevelRad: whole.bevelRad, bevels: whole.bevels } : bevelsOfStretch(edge, whole, part)),
  };
}

/** Seams are square, but for those between planks. */
function bevelsOfSeam(
  { role, points }: FlatEdge,
  part: Part,
  lengthMm: number,
): Pick<PartEdge, "bevelRad" | "bevels"> {
  const [from, to] = [at(points, 0), at(points, -1)];
  const isAlongRuling = role === "seam" && Math.abs(to.u - from.u) < 1e-9;
  const bevelRad = isAlongRuling ? plankBevelAt(part, from.u) : 0;
  if (bevelRad === 0) return { bevelRad: [0, 0], bevels: [] };
  return { bevelRad: [bevelRad, bevelRad], bevels: [0, lengthMm].map((alongMm) => ({ alongMm, bevelRad })) };
}

/** The bevels of a piece of an edge, read off the whole edge between where the piece starts and ends on it. */
function bevelsOfStretch(edge: FlatEdge, whole: PartEdge, part: Part): Pick<PartEdge, "bevelRad" | "bevels"> {
  if (whole.bevels.length === 0) return { bevelRad: [0, 0], bevels: [] };
  const fromMm = shareAlong(edge, whole, part) * whole.flatLengthMm;
  const toMm = fromMm + lengthOfEdgeMm(edge);
  const ends = [fromMm, toMm].map((alongMm) => ({ alongMm, bevelRad: bevelAt(whole.bevels, alongMm) }));
  const inside = whole.bevels.filter(({ alongMm }) => alongMm > fromMm && alongMm < toMm);
  const [start, end] = [at(ends, 0), at(ends, 1)];
  return {
    bevelRad: [start.bevelRad, end.bevelRad],
    bevels: [start, ...inside, end].map(({ alongMm, bevelRad }) => ({ alongMm: alongMm - fromMm, bevelRad })),
  };
}

function bevelAt(bevels: PartEdge["bevels"], alongMm: number): number {
  const next = bevels.findIndex((station) => station.alongMm >= alongMm);
  if (next <= 0) return at(bevels, next).bevelRad;
  const [a, b] = [at(bevels, next - 1), at(bevels, next)];
  return a.bevelRad + ((b.bevelRad - a.bevelRad) * (alongMm - a.alongMm)) / (b.alongMm - a.alongMm || 1);
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
