export { HistoryPanel } from "./HistoryPanel.tsx";
export { toggleSteps, useHistoryView } from "./history-view.ts";
export { takeSnapshot } from "./snapshots.ts";
