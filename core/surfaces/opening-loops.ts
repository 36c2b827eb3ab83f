import type { Curve } from "../curves/index.ts";
import { nameOfOpening, type Opening, type Project } from "../project/index.ts";
import { type DrawnPiece, imageOf } from "./drawn-loops.ts";

/** An opening as it may cut one section or transition: its loop, and its image where that is whole. */
export interface OpeningLoops {
  readonly opening: Opening;
  readonly loops: readonly (readonly DrawnPiece[])[];
}

/**
 * The openings that may cut a section or transition: every upright one, and square ones that name it. Their edges have
 * the ids `o<opening>.<element>`, with `.left` behind it in the left half of a whole one. A piece on the centre line
 * stays: it meets its image and falls away with it.
 */
export function openingLoops(
  project: Pick<Project, "openings">,
  item: { readonly id: string },
  curves: Readonly<Record<string, Curve>>,
  isJoined: boolean,
): readonly OpeningLoops[] {
  return project.openings.flatMap((opening): OpeningLoops[] => {
    const curve = curves[opening.id];
    if (!curve?.closed || (opening.cut === "square" && opening.itemId !== item.id)) return [];
    const loop = loopOf(opening, curve);
    if (!isJoined) return [{ opening, loops: [loop] }];
    const right = loop.map((drawn) => ({ ...drawn, name: `${drawn.name}, right` }));
    return [{ opening, loops: [right, loop.toReversed().map(imageOf)] }];
  });
}

function loopOf(opening: Opening, curve: Curve): readonly DrawnPiece[] {
  const typed = new Map(opening.outline.elements.map(({ id, edgeName }) => [id, edgeName]));
  return curve.pieces.map((piece) => {
    const own = typed.get(piece.edgeId);
    const name = nameOfOpening(opening);
    return {
      piece,
      reversed: false,
      edgeId: `o${opening.id}.${piece.edgeId}`,
      name: own ? `${name}, ${own}` : name,
      role: "free",
      wall: opening.cut,
      openingId: opening.id,
    };
  });
}
