import type { Strip } from "../cutting/index.ts";
import { at, formatAngle, formatMm, formatNumber } from "../foundation/index.ts";
import type { MarkingTable } from "../marking/index.ts";
import type { Part } from "../patterns/index.ts";
import {
  type Block,
  besideBlock,
  type Column,
  flowBlocks,
  gapBlock,
  headingBlock,
  paragraphBlock,
  stackBlock,
  tableBlocks,
} from "./blocks.ts";
import { heightOf } from "./boxes.ts";
import { cautionWords } from "./cautions.ts";
import { cuttingBesideWords, toolHazard } from "./cutting-words.ts";
import type { Design } from "./design.ts";
import { edgeWords } from "./edge-neighbours.ts";
import { layLines } from "./lay-lines.ts";
import type { Lettering } from "./lettering.ts";
import { CONTENT, CONTENT_WIDTH_MM, type SheetBody } from "./page-frame.ts";
import { seatBlocks } from "./seat-table.ts";
import { checkDiagonals, cornerPairs, stripDrawing } from "./strip-drawing.ts";
import { stripLoops, zoneWords } from "./strip-piece.ts";

/** The sheets of one strip: drawing, edges with their three lengths, bends, marking-out table. */
export function stripSheets(
  design: Design,
  strip: Strip,
  part: Part,
  lettering: Lettering,
): readonly SheetBody[] {
  const drawing = stripDrawing(design, strip, part, lettering);
  const table = design.marking.find((candidate) => candidate.stripId === strip.id);
  const text = (words: string) => paragraphBlock(words, CONTENT_WIDTH_MM, lettering);
  const head: readonly Block[] = [
    paragraphBlock(`${strip.id}  ${part.name}`, CONTENT_WIDTH_MM, lettering, { heightMm: 5, face: "bold" }),
    text(faceWords(design, strip, part)),
    text(cuttingBesideWords(design.project.cutting)),
    text(cautionWords(toolHazard(design.project.cutting))),
    drawing.block,
    text(diagonalWords(strip)),
    ...layWords(design, strip, part, table).map(text),
    headingBlock("Edges, lengths in mm"),
    ...edgeTable(design, strip, part, lettering),
    ...bendTable(strip, part, table, lettering),
    ...seatBlocks(strip, part, table?.origin.u ?? 0, { widthMm: CONTENT_WIDTH_MM, lettering }),
  ];
  const usedMm = head.reduce((sum, block) => sum + block.heightMm, 0);
  const blocks = table === undefined ? head : [...head, ...markingBlocks(table, usedMm, lettering)];
  return flowBlocks(blocks, CONTENT).map((marks) => ({
    title: `Strip ${strip.id}`,
    documentType: "strip",
    scale: `1:${drawing.scale}`,
    marks,
  }));
}

function faceWords(design: Design, strip: Strip, part: Part): string {
  const { foams } = design.project.materials;
  const foam = foams.find((candidate) => candidate.id === part.foamId)?.name ?? part.foamId;
  const stock = design.project.stock.find((candidate) => candidate.id === strip.stockId);
  const from =
    stock === undefined
      ? "No stock fits."
      : `From stock ${formatNumber(stock.lengthMm, 0)} × ${formatNumber(stock.widthMm, 0)} mm.`;
  const mirrored =
    part.hand === "left"
      ? ` This is the mirror image of the right hand: do not turn the right-hand strip over.`
      : "";
  const across = design.project.symmetry === "mirrored" ? " It lies across the centre line." : "";
  const hand = part.hand === "whole" ? across : ` ${sentence(part.hand)} hand.`;
  return `Drawn with the ${part.faceShown} toward you.${hand}${mirrored} ${formatNumber(part.thicknessMm, 1)} mm ${foam}, ${formatNumber(strip.areaMm2 / 1e6, 3)} m². ${from}`;
}

const sentence = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

function diagonalWords(strip: Strip): string {
  const diagonals = checkDiagonals(strip, 3);
  if (diagonals.length === 0) return "";
  const words = diagonals.map(([a, b, length]) => `${a}–${b}: ${formatMm(length)}`).join("; ");
  return `Check by tape, corner to corner on the flat, mm: ${words}.`;
}

/** What the dashed lines of the drawing are, ribs across with their place along the datum. */
function layWords(
  design: Design,
  strip: Strip,
  part: Part,
  table: MarkingTable | undefined,
): readonly string[] {
  const start = table?.origin.u ?? 0;
  const dashed = layLines(design, part, stripLoops(strip)).filter(({ line }) => line.style === "hidden");
  const words = dashed.map(({ line, words: name }) => {
    const [first, last] = [at(line.points, 0), at(line.points, -1)];
    const runsAcross = Math.abs(first.x - last.x) < 0.05;
    return runsAcross ? `${name} at ${formatMm(first.x - start)}` : name;
  });
  return words.length === 0 ? [] : [`Dashed, along the datum: ${words.join(", ")}.`];
}

function edgeTable(design: Design, strip: Strip, part: Part, lettering: Lettering): readonly Block[] {
  const pairs = cornerPairs(strip);
  const columns = [
    { title: "Edge", widthMm: 16, face: "mono" as const },
    { title: "Name", widthMm: 32 },
    { title: "Meets", widthMm: 46 },
    { title: "Drawn", widthMm: 20, face: "mono" as const, anchor: "end" as const },
    { title: "In space", widthMm: 20, face: "mono" as const, anchor: "end" as const },
    { title: "Flat", widthMm: 20, face: "mono" as const, anchor: "end" as const },
    { title: "Bevel", widthMm: 20, face: "mono" as const, anchor: "end" as const },
  ];
  const rows = strip.loops
    .flatMap((loop) => loop.edges)
    .map((edge, i) => {
      const measured = strip.edges.find((candidate) => candidate.edgeId === edge.edgeId);
      const [from, to] = pairs[i] ?? [0, 0];
      const lengths = measured
        ? [measured.drawnLengthMm, measured.spaceLengthMm, measured.flatLengthMm].map(formatMm)
        : ["", "", ""];
      return [
        `${from}–${to}`,
        edge.name,
        edgeWords(design, strip, part, edge),
        ...lengths,
        measured === undefined ? "" : bevelAngles(measured.bevelRad),
      ];
    });
  return [
    ...tableBlocks(columns, rows, lettering),
    gapBlock(1.5),
    paragraphBlock(
      "Drawn: on the drawn face. In space and flat: at the neutral fibre, bent and laid flat; the two agree. Bevel off square, at the edge's start and end.",
      CONTENT_WIDTH_MM,
      lettering,
      { heightMm: 1.8 },
    ),
  ];
}

/** The bevel at an edge's start and end as angles; which face is longer stands beside the neighbour. */
function bevelAngles([start, end]: readonly [number, number]): string {
  const [first, last] = [formatAngle(Math.abs(start)), formatAngle(Math.abs(end))];
  if (first === last) return first === formatAngle(0) ? "square" : first;
  return `${first} ${last}`;
}

/** The bends that lie on the strip, measured along its datum. */
function bendTable(
  strip: Strip,
  part: Part,
  table: MarkingTable | undefined,
  lettering: Lettering,
): readonly Block[] {
  const us = strip.outlineMm.map((p) => p.u);
  const [first, last] = [Math.min(...us), Math.max(...us)];
  const zones = part.zones.filter((zone) => zone.toUMm > first + 0.05 && zone.fromUMm < last - 0.05);
  if (zones.every((zone) => zone.leastRadiusMm === undefined)) {
    return [paragraphBlock("This strip stays flat.", CONTENT_WIDTH_MM, lettering)];
  }
  const columns = [
    { title: "From", widthMm: 22, face: "mono" as const, anchor: "end" as const },
    { title: "To", widthMm: 22, face: "mono" as const, anchor: "end" as const },
    { title: "Bend", widthMm: 72 },
    { title: "Method", widthMm: 28 },
    { title: "Strain", widthMm: 30, face: "mono" as const, anchor: "end" as const },
  ];
  const start = table?.origin.u ?? first;
  const rows = zones.map((zone) => [
    formatMm(Math.max(zone.fromUMm, first) - start),
    formatMm(Math.min(zone.toUMm, last) - start),
    zoneWords(zone),
    zone.verdict,
    `${formatNumber(zone.strain * 100, 2)} %`,
  ]);
  return [headingBlock("Bends, along the datum, mm"), ...tableBlocks(columns, rows, lettering)];
}

/** At most this many marks stand beside each other in the table. */
const MOST_OFFSETS = 6;

function markingBlocks(table: MarkingTable, usedMm: number, lettering: Lettering): readonly Block[] {
  const { columns, rows } = markingTable(table);
  const { origin, straightMissMm, battenMissMm } = table;
  const intro = [
    headingBlock("Marking out, mm"),
    paragraphBlock(
      `Draw one straight datum along the strip; it starts at flat u ${formatMm(origin.u)}, v ${formatMm(origin.v)}. Measure along it, then square from it; positive to the right hand looking forward. Largest miss when the marks are joined straight ${formatNumber(straightMissMm, 2)} mm, with a batten ${formatNumber(battenMissMm, 2)} mm.`,
      CONTENT_WIDTH_MM,
      lettering,
    ),
  ];
  const kept = intro.map((block): Block => ({ ...block, keepsWithNext: true }));
  const introMm = intro.reduce((sum, block) => sum + block.heightMm, 0);
  const roomMm = heightOf(CONTENT) - usedMm - introMm;
  return [...kept, ...besideColumns(columns, rows, { roomMm, lettering })];
}

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
function markingTable(table: MarkingTable): {
  readonly columns: readonly Column[];
  readonly rows: readonly (readonly string[])[];
} {
  const most = Math.max(1, ...table.rows.map((row) => row.offsetsMm.length));
  const shown = Math.min(most, MOST_OFFSETS);
  const columns: readonly Column[] = [
    { title: "Along", widthMm: 18, face: "mono", anchor: "end" },
    ...Array.from(
      { length: shown },
      (_, i): Column => ({
        title: `Mark ${i + 1}`,
        widthMm: shown <= 3 ? 16 : Math.min(24, 128 / shown),
        face: "mono",
        anchor: "end",
      }),
    ),
    { title: "Why", widthMm: 18 },
  ];
  const rows = table.rows.map((row) => {
    const rest = row.offsetsMm
      .slice(shown - 1)
      .map(formatMm)
      .join(", ");
    const marks = Array.from({ length: shown }, (_, i) => {
      const offset = row.offsetsMm[i];
      if (offset === undefined) return "";
      return i === shown - 1 && row.offsetsMm.length > shown ? rest : formatMm(offset);
    });
    return [formatMm(row.alongMm), ...marks, row.reason];
  });
  return { columns, rows };
}
