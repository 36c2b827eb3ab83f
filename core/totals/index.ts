export { foamMassKg, totalTray } from "./total-tray.ts";
export type { Totals, Tray } from "./types.ts";
