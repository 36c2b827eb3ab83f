import type { Strip } from "../cutting/index.ts";
import { formatMm, formatNumber } from "../foundation/index.ts";
import { hasBevels, type MarkingTable } from "../marking/index.ts";
import type { Part } from "../patterns/index.ts";
import { besideColumns } from "./beside-columns.ts";
import { bevelFigure } from "./bevel-words.ts";
import { type Block, type Column, headingBlock, heightOfAll, paragraphBlock } from "./blocks.ts";
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
      `Datum from flat u ${formatMm(origin.u)}, v ${formatMm(origin.v)}${hasBevels(marking.strip) ? `; marks on the ${marking.part.faceShown}` : ""}.${joinedBy === "batten" ? " Join the marks of a curve with a batten, not with a straightedge." : ""} Misses ${formatNumber(straightMissMm, 2)}\u00a0mm straight, ${formatNumber(battenMissMm, 2)}\u00a0mm by batten.`,
      CONTENT_WIDTH_MM,
      lettering,
    ),
  ];
  const kept = intro.map((block): Block => ({ ...block, keepsWithNext: true }));
  const freshMm = heightOf(CONTENT) - heightOfAll(intro);
  return [...kept, ...besideColumns(columns, rows, { roomMm: freshMm - usedMm, freshMm, lettering })];
}

const letterOf = (face: string): string => face.charAt(0).toUpperCase();

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
  const bevels = Array.from({ length: shown }, (_, i) => {
    const isShared = i === shown - 1 && most > shown;
    const marked = table.rows.filter((row) => row.offsetsMm.length > i);
    return { isShared, one: isShared ? undefined : sameOfAll(marked.map((row) => figureAt(row, i))) };
  });
  const markMm = hasFigures ? 17 : shown <= 3 ? 16 : Math.min(24, 128 / shown);
  const columns: readonly Column[] = [
    { title: "Along", widthMm: 18, face: "mono", anchor: "end" },
    ...bevels.flatMap(({ isShared, one }, i): readonly Column[] => [
      {
        title: `Mark\u00a0${i + 1} ${(one ?? "").replace(" ", "\u00a0")}`.trimEnd(),
        widthMm: markMm,
        face: "mono",
        anchor: "end",
      },
      ...(isShared || one !== undefined
        ? []
        : [{ title: "Bevel", widthMm: 19, face: "mono", anchor: "end" } as const]),
    ]),
    { title: "Why", widthMm: 18 },
  ];
  const rows = table.rows.map((row) => {
    const rest = row.offsetsMm
      .map((offset, i) => `${formatMm(offset)} ${figureAt(row, i)}`.trimEnd())
      .slice(shown - 1)
      .join(", ");
    const marks = bevels.flatMap(({ isShared, one }, i): readonly string[] => {
      const offset = row.offsetsMm[i];
      if (isShared) return [rest];
      const words = offset === undefined ? "" : formatMm(offset);
      return one === undefined ? [words, figureAt(row, i)] : [words];
    });
    return [formatMm(row.alongMm), ...marks, row.reason];
  });
  return { columns, rows };
}

/** What all are, where they are one; undefined where they differ. */
function sameOfAll(figures: readonly string[]): string | undefined {
  const [first = ""] = figures;
  return figures.every((figure) => figure === first) ? first : undefined;
}

/** A bevel as it stands in a narrow column: `7.0° A`; nothing where it is square. */
function bevelLetter(bevelRad: number, kind: Part["kind"]): string {
  const figure = bevelFigure(bevelRad, kind);
  const [angle, face] = figure.split(" ");
  return figure === "" ? "" : `${angle} ${letterOf(face ?? "")}`;
}
