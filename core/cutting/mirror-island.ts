import type { FlatLoop } from "../patterns/index.ts";
import type { Island } from "./group-islands.ts";

/** The mirror image of an island about v = 0; loops keep their sense (counter-clockwise outlines) and labels. */
export const mirrorIsland = (island: Island): Island => island.map(mirrorLoop);

const mirrorLoop = (loop: FlatLoop): FlatLoop => ({
  edges: loop.edges
    .map((edge) => ({ ...edge, points: edge.points.map(({ u, v }) => ({ u, v: -v })).reverse() }))
    .reverse(),
});
