export { bendZones } from "./bend-zones.ts";
export type { BendVerdict, BendZone } from "./types.ts";
