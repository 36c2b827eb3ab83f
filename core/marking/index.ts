export { markingTables } from "./marking-tables.ts";
export type { MarkingRow, MarkingTable, RowReason } from "./types.ts";
