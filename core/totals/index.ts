export { centreOf, centreOfLoops, type Weighing } from "./centre-of-mass.ts";
export { compareMeasures } from "./compare-measures.ts";
export { measureTray, type PartMeasure, type TrayMeasures } from "./measure-tray.ts";
export { foamMassKg, totalTray } from "./total-tray.ts";
export { NO_WEIGHT, type PartWeight, type Spread, type Totals, type Tray, type Weight } from "./types.ts";
export { weighTray } from "./weigh-tray.ts";
