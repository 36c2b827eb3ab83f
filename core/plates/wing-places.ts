import { at } from "../foundation/index.ts";
import type { Wing } from "../project/index.ts";
import type { DrawnWing } from "./course.ts";
import type { BaseEdge } from "./types.ts";

/** Where a wing stands on the loops, and how far it stays from the ends of its edge. */
export type WingPlace = Omit<DrawnWing, "figures" | "wingId" | "name">;

/**
 * The places of a wing on the base: one, and its image where the base is joined to its own. An edge that runs square
 * over the centre line bears one wing, as long at both ends as off the centre, where the wing neither stops short of
 * the centre line nor tapers there; else two. Empty where the edge is not there or is no single straight line.
 */
export function wingPlaces(wing: Wing, loops: readonly (readonly BaseEdge[])[]): readonly WingPlace[] {
  const straight = straightEdges(wing.edgeId, loops);
  if (straight.length !== 1) return [];
  const { edge, loopIndex, edgeIndex } = at(straight, 0);
  const own = { id: wing.id, loopIndex, edgeIndex, half: edge.half, ...endsOf(wing) };
  if (edge.half === "both") return placesOverCentre(own, edge);
  const image = straightEdges(`${wing.edgeId}.left`, loops)[0];
  if (!image) return [own];
  return [own, { ...mirrored(own), loopIndex: image.loopIndex, edgeIndex: image.edgeIndex, half: "image" }];
}

const endsOf = ({ startInsetMm, endInsetMm, startTaperRad, endTaperRad }: Wing) => ({
  startInsetMm,
  endInsetMm,
  startTaperRad,
  endTaperRad,
});

const straightEdges = (edgeId: string, loops: readonly (readonly BaseEdge[])[]) =>
  loops.flatMap((loop, loopIndex) =>
    loop.flatMap((edge, edgeIndex) =>
      edge.edgeId === edgeId && edge.isStraight ? [{ edge, loopIndex, edgeIndex }] : [],
    ),
  );

const mirrored = (place: WingPlace): WingPlace => ({
  ...place,
  id: `${place.id}.left`,
  startInsetMm: place.endInsetMm,
  endInsetMm: place.startInsetMm,
  startTaperRad: place.endTaperRad,
  endTaperRad: place.startTaperRad,
});

/** The drawn half of an edge over the centre line is that at y > 0: its end, where the edge runs to the right. */
function placesOverCentre(own: WingPlace, edge: BaseEdge): readonly WingPlace[] {
  const [from, to] = [at(edge.points, 0), at(edge.points, -1)];
  const halfMm = Math.hypot(to.x - from.x, to.y - from.y) / 2;
  const isDrawnLast = to.y > 0;
  const image = mirrored(own);
  const reachesCentre = isDrawnLast
    ? own.startInsetMm === 0 && own.startTaperRad === 0
    : own.endInsetMm === 0 && own.endTaperRad === 0;
  if (reachesCentre) {
    const [first, last] = isDrawnLast ? [image, own] : [own, image];
    const { startInsetMm, startTaperRad } = first;
    const { endInsetMm, endTaperRad } = last;
    return [{ ...own, startInsetMm, startTaperRad, endInsetMm, endTaperRad }];
  }
  const onDrawn = isDrawnLast
    ? { ...own, startInsetMm: own.startInsetMm + halfMm }
    : { ...own, endInsetMm: own.endInsetMm + halfMm };
  const onImage = isDrawnLast
    ? { ...image, endInsetMm: image.endInsetMm + halfMm }
    : { ...image, startInsetMm: image.startInsetMm + halfMm };
  return [
    { ...onDrawn, half: "drawn" },
    { ...onImage, half: "image" },
  ];
}
