import { type Column, leastWidthMm } from "./blocks.ts";
import type { Lettering } from "./lettering.ts";

type Rows = readonly (readonly string[])[];

export const widthOfColumns = (columns: readonly Column[]): number =>
  columns.reduce((sum, { widthMm }) => sum + widthMm, 0);

/** The columns no wider than their longest cell and the longest word of their title. */
export const narrowed = (columns: readonly Column[], rows: Rows, lettering: Lettering): readonly Column[] =>
  columns.map((column, i) => {
    if (column.isWrittenIn) return column;
    const cells = rows.map((row) => row[i] ?? "");
    return { ...column, widthMm: Math.min(column.widthMm, leastWidthMm(column, cells, lettering)) };
  });

/** The columns narrowed, and what that leaves of the table's width given to the one with this title. */
export function widenedAt(
  title: string,
  columns: readonly Column[],
  rows: Rows,
  lettering: Lettering,
): readonly Column[] {
  const narrow = narrowed(columns, rows, lettering);
  const freeMm = widthOfColumns(columns) - widthOfColumns(narrow);
  return narrow.map((column) =>
    column.title === title ? { ...column, widthMm: column.widthMm + freeMm } : column,
  );
}
