import { at } from "../foundation/index.ts";
import { type FlatEdge, faceBehind, type Part } from "../patterns/index.ts";
import type { Project } from "../project/index.ts";
import { plankBevelAt } from "./divide-planks.ts";
import type { Island } from "./group-islands.ts";
import { offsetEdges } from "./offset-loops.ts";
import type { NamedPiece } from "./seams-between.ts";
import type { Seam, StripTaper } from "./types.ts";

/** How long the scarfs of a part are, mm; 0 where its strips are butted. */
export function scarfLengthMm(part: Part, { cutting }: Pick<Project, "cutting">): number {
  const ratio = cutting.scarfRatio ?? 0;
  return part.kind === "transition" || !(ratio > 0) ? 0 : ratio * part.thicknessMm;
}

/**
 * Pieces whose spliced edges have half the scarf left standing, to be tapered: a scarf's middle lies where a butt would.
 * Planks are not spliced: they meet at a bevel.
 */
export function withScarfSpare(
  pieces: readonly NamedPiece[],
  part: Part,
  lengthMm: number,
): readonly NamedPiece[] {
  if (lengthMm === 0) return pieces;
  const spared = (edge: FlatEdge): FlatEdge =>
    isSpliced(edge, part) ? { ...edge, spare: { lengthMm: lengthMm / 2, for: "scarf" } } : edge;
  return pieces.map(({ id, loops }) => ({
    id,
    loops: loops.map(({ edges }) => ({ edges: edges.map(spared) })),
  }));
}

function isSpliced({ role, points }: FlatEdge, part: Part): boolean {
  if (role !== "seam") return false;
  const [from, to] = [at(points, 0), at(points, -1)];
  return Math.abs(to.u - from.u) > 1e-9 || plankBevelAt(part, from.u) === 0;
}

export const withScarf = (seam: Seam, lengthMm: number): Seam =>
  lengthMm === 0 || seam.bevelRad !== undefined ? seam : { ...seam, scarfMm: lengthMm };

/** The lines at which a strip's tapers begin: as far inside each spliced edge as the edge stands out. */
export function tapersOf(
  stripId: string,
  loops: Island,
  seams: readonly Seam[],
  part: Part,
): readonly StripTaper[] {
  return loops.flatMap(({ edges }) => {
    if (!edges.some(({ spare }) => spare !== undefined)) return [];
    return offsetEdges(edges, (edge) => -(edge.spare?.lengthMm ?? 0)).flatMap(
      ({ edge, points }): readonly StripTaper[] => {
        if (edge.spare === undefined) return [];
        const seam = seams.find(
          ({ stripIds, id }) => stripIds.includes(stripId) && edge.edgeId === `seam:${id}`,
        );
        const isFirst = (seam?.stripIds[0] ?? stripId) === stripId;
        const face = isFirst ? part.faceShown : faceBehind(part);
        return [{ seamEdgeId: edge.edgeId, lineMm: points, face, lengthMm: 2 * edge.spare.lengthMm }];
      },
    );
  });
}
