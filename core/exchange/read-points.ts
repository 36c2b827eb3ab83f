import { COINCIDENT_POINTS_MM, distance2, type Vec2 } from "../foundation/index.ts";
import type { Complaint } from "./complaint.ts";
import { readDecimal } from "./read-decimal.ts";
import type { Drawn } from "./read-svg.ts";
import { chain } from "./shape-contours.ts";
import { splitTable, type TableRow } from "./split-table.ts";

/** More complaints of rows than this help nobody. */
const MOST_COMPLAINTS = 8;

/**
 * The one line that a table of points makes: x and y, or x and z, in the first two columns, or in those that a
 * heading names. A line that ends where it begins is closed. A row that cannot be read makes a complaint, and no
 * line is made: a missing point would change it unseen.
 */
export function readPoints(text: string, unitMm: number): Drawn {
  const rows = splitTable(text);
  const head = rows[0]?.cells.every((cell) => readDecimal(cell) === undefined) ? rows[0] : undefined;
  const columns = columnsOf(head);
  const body = head ? rows.slice(1) : rows;
  const complaints: Complaint[] = [];
  const points: Vec2[] = [];
  for (const row of body) {
    const point = pointOf(row, columns, head !== undefined);
    if ("kind" in point) complaints.push(point);
    else points.push([point.at[0] * unitMm, point.at[1] * unitMm]);
  }
  if (complaints.length > 0) return { contours: [], complaints: shortened(complaints) };
  const strokes = chain(points);
  if (strokes.length === 0) return { contours: [], complaints: [{ kind: "too-few", count: points.length }] };
  const [first, last] = [points[0], points.at(-1)];
  const closed = points.length > 3 && first && last && distance2(first, last) <= COINCIDENT_POINTS_MM;
  return {
    contours: [
      { name: "table", line: body[0]?.line ?? 1, closed: closed === true, isSampled: true, strokes },
    ],
    complaints: [],
  };
}

interface Columns {
  readonly x: number;
  readonly up: number;
  /** How many the heading names. */
  readonly wide: number;
}

/** Where x and y (or z) stand by the heading: `x mm`, `y [mm]`, `Z`; the first two columns where it names none. */
function columnsOf(head: TableRow | undefined): Columns {
  const names = head?.cells.map((cell) => /^[a-z]+/.exec(cell.trim().toLowerCase())?.[0] ?? "") ?? [];
  const x = names.indexOf("x");
  const up = names.findIndex((name) => name === "y" || name === "z");
  const wide = names.length;
  return x >= 0 && up >= 0 ? { x, up, wide } : { x: 0, up: 1, wide };
}

function pointOf(
  { line, cells }: TableRow,
  columns: Columns,
  hasHead: boolean,
): Complaint | { readonly at: Vec2 } {
  const filled = cells.filter((cell) => cell !== "");
  if (hasHead ? cells.length > columns.wide || filled.length < 2 : filled.length !== 2) {
    return { kind: "wrong-count", line, text: cells.join(",").slice(0, 40), count: filled.length };
  }
  const [first = "", second = ""] = hasHead ? [cells[columns.x], cells[columns.up]] : filled;
  const wrong = [first, second].find((cell) => readDecimal(cell) === undefined);
  if (wrong !== undefined) return { kind: "no-number", line, cell: wrong.slice(0, 40) };
  return { at: [readDecimal(first) ?? 0, readDecimal(second) ?? 0] };
}

const shortened = (complaints: readonly Complaint[]): readonly Complaint[] =>
  complaints.length <= MOST_COMPLAINTS
    ? complaints
    : [...complaints.slice(0, MOST_COMPLAINTS), { kind: "more", count: complaints.length - MOST_COMPLAINTS }];
