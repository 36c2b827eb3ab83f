export { buildJig } from "./build-jig.ts";
export type { Baseboard, Jig, Rib, RibHeight } from "./types.ts";
