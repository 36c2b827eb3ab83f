export type { BendZone, FlatEdge, FlatLoop, Part, PartEdge } from "./types.ts";
