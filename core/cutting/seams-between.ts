import { at, type FlatPoint } from "../foundation/index.ts";
import type { FlatEdge, FlatLoop } from "../patterns/index.ts";
import type { CutAxis } from "./divide-loops.ts";
import type { Island } from "./group-islands.ts";
import type { Seam } from "./types.ts";

/** A piece with its name, before and after its seam edges have theirs. */
export interface NamedPiece {
  readonly id: string;
  readonly loops: Island;
}

/** Shorter contact than this is a corner touching a corner, mm. */
const LEAST_SEAM_MM = 0.5;

/**
 * The seams between the pieces of one part: every stretch where two pieces touch along a cut. Two pieces that
 * touch in several stretches of one cut share one seam.
 */
export function seamsBetween(partId: string, pieces: readonly NamedPiece[]): Seam[] {
  const sides = pieces.flatMap(seamSidesOf);
  const seams = new Map<string, Seam>();
  for (const below of sides.filter(({ side }) => side === "below")) {
    for (const above of sides.filter((other) => other.side === "above" && isSameCut(below, other))) {
      const lengthMm = Math.min(below.toMm, above.toMm) - Math.max(below.fromMm, above.fromMm);
      if (lengthMm < LEAST_SEAM_MM) continue;
      const pair = [below.pieceId, above.pieceId].sort(byOrderIn(pieces));
      const stripIds: readonly [string, string] = [at(pair, 0), at(pair, 1)];
      const key = `${stripIds.join("/")} ${below.axis}${below.atMm}`;
      const runs = below.axis === "u" ? "along ruling" : "across rulings";
      const before = seams.get(key)?.lengthMm ?? 0;
      const id = stripIds.join("/");
      seams.set(key, { id, partId, stripIds, runs, atMm: below.atMm, lengthMm: before + lengthMm });
    }
  }
  const order = byOrderIn(pieces);
  const sorted = [...seams.values()].sort(
    (a, b) => order(a.stripIds[0], b.stripIds[0]) || order(a.stripIds[1], b.stripIds[1]),
  );
  return sorted.map((seam, i) => {
    const earlier = sorted.slice(0, i).filter(({ id }) => id === seam.id).length;
    return earlier === 0 ? seam : { ...seam, id: `${seam.id}.${earlier + 1}` };
  });
}

/** The pieces with each seam edge named after its seam, and divided where the neighbour changes. */
export function nameSeamEdges(pieces: readonly NamedPiece[], seams: readonly Seam[]): NamedPiece[] {
  const sides = pieces.flatMap(seamSidesOf);
  const nameEdge = (pieceId: string, edge: FlatEdge): FlatEdge[] => {
    const own = sideOfEdge(pieceId, edge);
    if (own === undefined) return [edge];
    const neighbours = sides
      .filter((other) => other.side !== own.side && isSameCut(own, other))
      .map((other) => ({
        seam: seams.find(
          (seam) =>
            seam.stripIds.includes(pieceId) &&
            seam.stripIds.includes(other.pieceId) &&
            other.pieceId !== pieceId &&
            Math.abs(seam.atMm - own.atMm) < 1e-9,
        ),
        fromMm: Math.max(own.fromMm, other.fromMm),
        toMm: Math.min(own.toMm, other.toMm),
      }))
      .filter(({ seam, fromMm, toMm }) => seam !== undefined && toMm - fromMm >= LEAST_SEAM_MM)
      .sort((a, b) => (own.isRising ? a.fromMm - b.fromMm : b.fromMm - a.fromMm));
    const along = own.axis === "u" ? "v" : "u";
    const parts: FlatEdge[] = [];
    let from: FlatPoint = at(edge.points, 0);
    for (const [i, { seam, fromMm, toMm }] of neighbours.entries()) {
      const isLast = i === neighbours.length - 1;
      const endMm = own.isRising ? toMm : fromMm;
      const to = isLast ? at(edge.points, -1) : { ...from, [along]: endMm };
      const id = seam?.id ?? "";
      parts.push({ ...edge, edgeId: `seam:${id}`, name: `seam ${id}`, points: [from, to] });
      from = to;
    }
    return parts.length > 0 ? parts : [edge];
  };
  return pieces.map(({ id, loops }) => ({
    id,
    loops: loops.map((loop): FlatLoop => ({ edges: loop.edges.flatMap((edge) => nameEdge(id, edge)) })),
  }));
}

/** One seam edge of a piece: where its cut is, which side of it the piece lies on, and from where to where. */
interface SeamSide {
  readonly pieceId: string;
  readonly axis: CutAxis;
  readonly atMm: number;
  readonly side: "below" | "above";
  readonly fromMm: number;
  readonly toMm: number;
  readonly isRising: boolean;
}

const seamSidesOf = ({ id, loops }: NamedPiece): SeamSide[] =>
  loops.flatMap((loop) =>
    loop.edges.flatMap((edge) => {
      const side = sideOfEdge(id, edge);
      return side === undefined ? [] : [side];
    }),
  );

function sideOfEdge(pieceId: string, edge: FlatEdge): SeamSide | undefined {
  if (edge.role !== "seam") return undefined;
  const from = at(edge.points, 0);
  const to = at(edge.points, -1);
  const axis = Math.abs(to.u - from.u) < Math.abs(to.v - from.v) ? "u" : "v";
  const along = axis === "u" ? "v" : "u";
  const isRising = to[along] > from[along];
  // The foam lies on the left: below a cut at constant u when the edge rises, below one at constant v when it falls.
  const side = (axis === "u") === isRising ? "below" : "above";
  const [fromMm, toMm] = isRising ? [from[along], to[along]] : [to[along], from[along]];
  return { pieceId, axis, atMm: from[axis], side, fromMm, toMm, isRising };
}

const isSameCut = (a: SeamSide, b: SeamSide): boolean =>
  a.axis === b.axis && Math.abs(a.atMm - b.atMm) < 1e-9;

const byOrderIn = (pieces: readonly NamedPiece[]) => {
  const order = new Map(pieces.map(({ id }, i) => [id, i]));
  return (a: string, b: string) => (order.get(a) ?? 0) - (order.get(b) ?? 0);
};
