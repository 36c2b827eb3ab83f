import { type DataTable, type Design, dataTables, type PaperWork } from "../book/index.ts";
import type { NamedText } from "./named-text.ts";

/**
 * A table after RFC 4180: lines end with CR LF, also the last; a field is quoted where it holds a comma, a quote
 * or a line break, and a quote inside is doubled. Numbers are written as they are, with a full stop.
 */
export function writeCsv(table: Pick<DataTable, "header" | "rows">): string {
  return [table.header, ...table.rows].map((row) => `${row.map(field).join(",")}\r\n`).join("");
}

/** Every table of a design as a CSV file. */
export const writeCsvFiles = (design: Design, work?: PaperWork): readonly NamedText[] =>
  dataTables(design, work).map((table) => ({ name: `${table.name}.csv`, text: writeCsv(table) }));

function field(value: string | number): string {
  const text = String(value);
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
