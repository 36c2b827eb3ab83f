export { toggleSteps, useHistoryView } from "./history-view.ts";
export { takeSnapshot } from "./snapshots.ts";
