export { bendSolid } from "./bend-solid.ts";
export { jigSolids } from "./jig-solids.ts";
export { type MadeTray, traySolids } from "./tray-solids.ts";
export type { Solid, SolidBend } from "./types.ts";
