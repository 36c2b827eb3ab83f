import Papa from "papaparse";

/** What stands between the columns of a table of numbers. */
export type Separator = "tab" | "semicolon" | "comma" | "space";

/** One row of a table as it was written; `line` counts from 1 as an editor does. Empty lines are no rows. */
export interface TableRow {
  readonly line: number;
  readonly cells: readonly string[];
}

/**
 * A table of text as rows of trimmed cells: a block from a spreadsheet or a CSV file, with any line ends, with or
 * without a byte order mark, cells quoted or not.
 */
export function splitTable(text: string, separator: Separator = separatorOf(text)): readonly TableRow[] {
  const plain = plainText(text);
  return separator === "space" ? splitAtSpaces(plain) : splitAt(plain, SIGNS[separator]);
}

const SIGNS = { tab: "\t", semicolon: ";", comma: "," } as const;
/** Lines that are looked at to tell the separator. */
const LOOKED_AT = 50;
/** `12,4 7,5`: commas are decimal and spaces stand between. */
const SPACED_DECIMALS = /^\s*[-+\u2212]?\d*,\d+(\s+[-+\u2212]?\d*,?\d+)+\s*$/;

/**
 * What separates the columns: a tab or semicolon where there is one, else a comma, else spaces. Commas inside
 * quotes, and in `12,4 7,5`, are decimal.
 */
export function separatorOf(text: string): Separator {
  const lines = plainText(text.slice(0, 20_000)).split("\n").slice(0, LOOKED_AT);
  const bare = lines.map((line) => line.replaceAll(/"[^"]*"/g, "q")).filter((line) => line.trim() !== "");
  if (bare.some((line) => line.includes("\t"))) return "tab";
  if (bare.some((line) => line.includes(";"))) return "semicolon";
  const withComma = bare.filter((line) => line.includes(","));
  if (withComma.length > 0) return withComma.some((line) => SPACED_DECIMALS.test(line)) ? "space" : "comma";
  return bare.some((line) => /\S\s+\S/.test(line)) ? "space" : "tab";
}

const plainText = (text: string): string => text.replace(/^\uFEFF/, "").replaceAll(/\r\n?/g, "\n");

function splitAt(text: string, delimiter: string): readonly TableRow[] {
  const { data } = Papa.parse<readonly string[]>(text, { delimiter, newline: "\n" });
  const rows: TableRow[] = [];
  let line = 1;
  for (const cells of data) {
    const row = cells.map((cell) => cell.trim());
    if (row.some((cell) => cell !== "")) rows.push({ line, cells: row });
    line += 1 + cells.reduce((sum, cell) => sum + (cell.split("\n").length - 1), 0);
  }
  return rows;
}

const splitAtSpaces = (text: string): readonly TableRow[] =>
  text.split("\n").flatMap((line, index) => {
    const cells = line.trim().split(/\s+/);
    return cells[0] === "" ? [] : [{ line: index + 1, cells }];
  });
