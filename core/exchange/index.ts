export { readDecimal } from "./read-decimal.ts";
export { type Separator, separatorOf, splitTable, type TableRow } from "./split-table.ts";
