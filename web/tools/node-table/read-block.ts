import { separatorOf, splitTable, type TableRow } from "../../../core/exchange/index.ts";
import { MOST_NODES } from "../../../core/foundation/index.ts";
import { type Lengths, lengthsIn } from "../../lengths/index.ts";

/** A block of a spreadsheet as lengths in mm, row by row; undefined where a cell was empty. */
export type Block = readonly (readonly (number | undefined)[])[];

/** The lengths of a block, or in plain words what cannot be read, row by row. */
export type ReadBlock =
  | { readonly ok: true; readonly block: Block }
  | { readonly ok: false; readonly complaints: readonly string[] };

/** More complaints than this help nobody. */
const MOST_COMPLAINTS = 5;

/** Whether a pasted text is a block of cells rather than something to be typed into one. */
export const isBlock = (text: string): boolean => /[\t;]|\S\s*[\r\n]+\s*\S/.test(text.trim());

/**
 * The lengths of a pasted block in the builder's units, or in the unit that its first row names. A first row
 * without any number is its heading; a first column that the heading calls `node` holds names.
 */
export function readBlock(text: string, typedLengths: Lengths): ReadBlock {
  if (isAmbiguous(text)) return refuse([AMBIGUOUS]);
  const rows = splitTable(text);
  const head = rows[0]?.cells ?? [];
  const hasHead = head.every((cell) => typedLengths.read(cell) === undefined);
  const lengths = (hasHead && lengthsNamed(head)) || typedLengths;
  const skipsFirst = hasHead && head[0]?.toLowerCase() === "node";
  const body = (hasHead ? rows.slice(1) : rows).map((row) =>
    skipsFirst ? { ...row, cells: row.cells.slice(1) } : row,
  );
  if (body.length === 0) return refuse(["There are no numbers in what was pasted."]);
  if (body.length > MOST_NODES) {
    return refuse([
      `${body.length} rows were pasted; a line has at most ${MOST_NODES} nodes. Import them as a file, which thins them.`,
    ]);
  }
  const complaints = body.flatMap((row) => complaintsOf(row, lengths));
  if (complaints.length > 0) return refuse(shortened(complaints));
  return { ok: true, block: body.map(({ cells }) => cells.map((cell) => lengths.read(cell))) };
}

const refuse = (complaints: readonly string[]): ReadBlock => ({ ok: false, complaints });

const AMBIGUOUS =
  "A comma between digits can part two columns or be a decimal sign. Put tabs or semicolons between the columns.";

/** One comma in each row, and nothing else that would tell what it is. */
function isAmbiguous(text: string): boolean {
  const lines = text.split(/[\r\n]+/).filter((line) => line.trim() !== "");
  return separatorOf(text) === "comma" && lines.every((line) => /^\s*[-+\u2212]?\d+,\d+\s*$/.test(line));
}

function lengthsNamed(cells: readonly string[]): Lengths | undefined {
  const words = cells.join(" ").toLowerCase();
  if (/\bmm\b/.test(words)) return lengthsIn("mm");
  return /\b(in|inch|inches)\b/.test(words) ? lengthsIn("inch") : undefined;
}

const complaintsOf = ({ line, cells }: TableRow, lengths: Lengths): readonly string[] =>
  cells.flatMap((cell) =>
    cell !== "" && lengths.read(cell) === undefined ? [`Row ${line}: “${cell}” is no length.`] : [],
  );

const shortened = (complaints: readonly string[]): readonly string[] =>
  complaints.length <= MOST_COMPLAINTS
    ? complaints
    : [...complaints.slice(0, MOST_COMPLAINTS), `And ${complaints.length - MOST_COMPLAINTS} more.`];
