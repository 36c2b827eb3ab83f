export { compareMeasures } from "./compare-measures.ts";
export { measureTray, type PartMeasure, type TrayMeasures } from "./measure-tray.ts";
export { foamMassKg, totalTray } from "./total-tray.ts";
export type { Totals, Tray } from "./types.ts";
