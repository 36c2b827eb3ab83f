export type { Baseboard, Jig, Rib, RibHeight } from "./types.ts";
