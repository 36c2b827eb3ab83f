import type { Strip } from "../cutting/index.ts";
import { formatMm, formatNumber } from "../foundation/index.ts";
import { hasBevels, type MarkingTable } from "../marking/index.ts";
import type { Part } from "../patterns/index.ts";
import { bevelFigure } from "./bevel-words.ts";
import {
  type Block,
  besideBlock,
  type Column,
  headingBlock,
  paragraphBlock,
  stackBlock,
  tableBlocks,
} from "./blocks.ts";
import { heightOf } from "./boxes.ts";
import type { Lettering } from "./lettering.ts";
import { CONTENT, CONTENT_WIDTH_MM } from "./page-frame.ts";

/** At most this many marks stand beside each other in the table; fewer where each has its bevel. */
const MOST_OFFSETS = 6;

const MOST_BEVELLED = 3;

interface Marking {
  readonly table: MarkingTable;
  readonly strip: Strip;
  readonly part: Part;
}

export function markingBlocks(marking: Marking, usedMm: number, lettering: Lettering): readonly Block[] {
  const { columns, rows } = markingTable(marking);
  const { origin, straightMissMm, battenMissMm, joinedBy } = marking.table;
  const intro = [
    headingBlock("Marking out, mm"),
    paragraphBlock(
      `Draw one straight datum along the strip; it starts at flat u ${formatMm(origin.u)}, v ${formatMm(origin.v)}. Measure along it, then square from it; positive to the right hand looking forward.${joinedBy === "batten" ? " Join the marks of a curve with a batten, not with a straightedge." : ""} Largest miss when the marks are joined straight ${formatNumber(straightMissMm, 2)} mm, with a batten ${formatNumber(battenMissMm, 2)} mm.`,
      CONTENT_WIDTH_MM,
      lettering,
    ),
    ...(hasBevels(marking.strip)
      ? [paragraphBlock(bevelColumnWords(marking), CONTENT_WIDTH_MM, lettering)]
      : []),
  ];
  const kept = intro.map((block): Block => ({ ...block, keepsWithNext: true }));
  const introMm = intro.reduce((sum, block) => sum + block.heightMm, 0);
  const roomMm = heightOf(CONTENT) - usedMm - introMm;
  return [...kept, ...besideColumns(columns, rows, { roomMm, lettering })];
}

/** On which face the marks are, and what the letters beside the bevels say. */
function bevelColumnWords({ part }: Marking): string {
  const [away, near] = part.kind === "fence" ? ["outboard", "inboard"] : ["air", "upper"];
  return `The marks are those of the line to cut by on the ${part.faceShown}, the face shown. Beside each mark the bevel of its edge off square: ${letterOf(away)} where the ${away} face is the longer one, ${letterOf(near)} where the ${near} face is.`;
}

const letterOf = (face: string): string => face.charAt(0).toUpperCase();

/** The rows in one column of a page, in two beside each other where they are narrow and too many for one. */
function besideColumns(
  columns: readonly Column[],
  rows: readonly (readonly string[])[],
  place: { readonly roomMm: number; readonly lettering: Lettering },
): readonly Block[] {
  const { roomMm, lettering } = place;
  const widthMm = columns.reduce((sum, column) => sum + column.widthMm, 0);
  const all = tableBlocks(columns, rows, lettering);
  const heightMm = all.reduce((sum, block) => sum + block.heightMm, 0);
  if (heightMm <= roomMm || 2 * widthMm + 6 > CONTENT_WIDTH_MM) return all;
  const rowMm = heightMm / (rows.length + 1);
  const fitting = Math.floor(roomMm / rowMm) - 1;
  const perColumn = fitting < 4 ? Math.floor(heightOf(CONTENT) / rowMm) - 1 : fitting;
  const shown = rows.slice(0, 2 * perColumn);
  const half = Math.min(perColumn, Math.ceil(shown.length / 2));
  const column = (part: readonly (readonly string[])[]) => stackBlock(tableBlocks(columns, part, lettering));
  const pair = besideBlock(column(shown.slice(0, half)), column(shown.slice(half)), CONTENT_WIDTH_MM / 2 + 3);
  const rest = rows.slice(shown.length);
  return rest.length === 0
    ? [pair]
    : [pair, ...besideColumns(columns, rest, { roomMm: heightOf(CONTENT), lettering })];
}

/** The columns and cells of a marking-out table; marks beyond the last column share it. */
function markingTable({ table, part }: Marking): {
  readonly columns: readonly Column[];
  readonly rows: readonly (readonly string[])[];
} {
  const most = Math.max(1, ...table.rows.map((row) => row.offsetsMm.length));
  const figureAt = (row: MarkingTable["rows"][number], i: number) =>
    bevelLetter(row.bevelsRad[i] ?? 0, part.kind);
  const hasFigures = table.rows.some((row) => row.offsetsMm.some((_, i) => figureAt(row, i) !== ""));
  const shown = Math.min(most, hasFigures ? MOST_BEVELLED : MOST_OFFSETS);
  const isBevelled = (i: number) => table.rows.some((row) => figureAt(row, i) !== "");
  const markMm = hasFigures ? 17 : shown <= 3 ? 16 : Math.min(24, 128 / shown);
  const columns: readonly Column[] = [
    { title: "Along", widthMm: 18, face: "mono", anchor: "end" },
    ...Array.from({ length: shown }, (_, i): readonly Column[] => [
      { title: `Mark ${i + 1}`, widthMm: markMm, face: "mono", anchor: "end" },
      ...(isBevelled(i) ? [{ title: "Bevel", widthMm: 19, face: "mono", anchor: "end" } as const] : []),
    ]).flat(),
    { title: "Why", widthMm: 18 },
  ];
  const rows = table.rows.map((row) => {
    const rest = row.offsetsMm
      .map((offset, i) => `${formatMm(offset)} ${figureAt(row, i)}`.trimEnd())
      .slice(shown - 1)
      .join(", ");
    const marks = Array.from({ length: shown }, (_, i): readonly string[] => {
      const offset = row.offsetsMm[i];
      const isShared = i === shown - 1 && row.offsetsMm.length > shown;
      const words = offset === undefined ? "" : isShared ? rest : formatMm(offset);
      return [words, ...(isBevelled(i) ? [isShared ? "" : figureAt(row, i)] : [])];
    }).flat();
    return [formatMm(row.alongMm), ...marks, row.reason];
  });
  return { columns, rows };
}

/** A bevel as it stands in a narrow column: `7.0° A`; nothing where it is square. */
function bevelLetter(bevelRad: number, kind: Part["kind"]): string {
  const figure = bevelFigure(bevelRad, kind);
  const [angle, face] = figure.split(" ");
  return figure === "" ? "" : `${angle} ${letterOf(face ?? "")}`;
}
