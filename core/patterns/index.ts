export { faceBehind } from "./face-behind.ts";
export { flatLengthMm, loopAreaMm2, loopsAreaMm2, polygonOfLoop } from "./flat-loops.ts";
export { layOutlines, type PartOutline } from "./lay-outlines.ts";
export { layParts } from "./lay-parts.ts";
export { type Shortest, shortestBetween } from "./nearest-lines.ts";
export { type FlatToSpace, partPlaces } from "./part-places.ts";
export { joinPolylines, moveInward } from "./set-back-edges.ts";
export { stretchesAcross } from "./stretches-across.ts";
export type { BevelStation, FlatEdge, FlatLoop, FlatRuling, OpeningWeb, Part, PartEdge } from "./types.ts";
