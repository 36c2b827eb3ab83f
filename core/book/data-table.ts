/** A table for a spreadsheet: the unit stands in each heading. */
export interface DataTable {
  /** File name without ending. */
  readonly name: string;
  readonly header: readonly string[];
  readonly rows: readonly (readonly (string | number)[])[];
}
