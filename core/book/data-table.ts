import { roundTo, toDegrees } from "../foundation/index.ts";

/** A table for a spreadsheet: the unit stands in each heading. */
export interface DataTable {
  /** File name without ending. */
  readonly name: string;
  readonly header: readonly string[];
  readonly rows: readonly (readonly (string | number)[])[];
}

/** Lengths in tables keep three places, mm; angles two, degrees. */
export const mm = (value: number): number => roundTo(value, 3);
export const degrees = (angleRad: number): number => roundTo(toDegrees(angleRad), 2);
