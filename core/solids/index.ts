export { bendSolid } from "./bend-solid.ts";
export { type MadeTray, traySolids } from "./tray-solids.ts";
export type { Solid, SolidBend } from "./types.ts";
