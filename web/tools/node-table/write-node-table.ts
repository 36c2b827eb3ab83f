import { roundTo } from "../../../core/foundation/index.ts";
import { type Lengths, toInches } from "../../lengths/index.ts";
import type { NodeTable } from "./node-table.ts";

/** Finer than a hundredth of what a knife can follow, in mm and in inches. */
const DECIMALS = { mm: 4, inch: 6 } as const;

/**
 * A table of nodes as a spreadsheet takes it: columns between tabs, names and units in the first row, lengths in
 * the builder's units with the decimal sign of this device.
 */
export function writeNodeTable(table: NodeTable, lengths: Lengths, decimalSign: "." | ","): string {
  const write = (lengthMm: number | undefined): string => {
    if (lengthMm === undefined) return "";
    const value = lengths.units === "inch" ? toInches(lengthMm) : lengthMm;
    return String(roundTo(value, DECIMALS[lengths.units])).replace(".", decimalSign);
  };
  const head = ["node", ...table.columns.map((column) => `${column} ${lengths.unit}`)];
  const rows = table.rows.map(({ label, values }) => [
    label,
    ...table.columns.map((_, index) => write(values?.[index])),
  ]);
  return [head, ...rows].map((cells) => `${cells.join("\t")}\n`).join("");
}
