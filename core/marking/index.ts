export type { MarkingRow, MarkingTable, RowReason } from "./types.ts";
