import type { Strip } from "../cutting/index.ts";
import { at, formatAngle, formatMm, formatNumber, MINUS } from "../foundation/index.ts";
import { wordBend } from "../jig/index.ts";
import {
  type EdgeMark,
  faceShiftMm,
  hasBevels,
  isFitted,
  type MarkingTable,
  shownFace,
} from "../marking/index.ts";
import { faceBehind, type Part, type PartEdge } from "../patterns/index.ts";
import { backId, needsBack } from "./back-piece.ts";
import { bevelFigure } from "./bevel-words.ts";
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
import { edgeWords, measuredEdge } from "./edge-neighbours.ts";
import { layLines } from "./lay-lines.ts";
import type { Lettering } from "./lettering.ts";
import { markWords } from "./mark-words.ts";
import { CONTENT, CONTENT_WIDTH_MM, type SheetBody } from "./page-frame.ts";
import { printedTable } from "./printed-table.ts";
import { seatBlocks } from "./seat-table.ts";
import { checkDiagonals, cornerPairs, type StripSetting, stripDrawing } from "./strip-drawing.ts";
import { stripLoops, zoneWords } from "./strip-piece.ts";
import { transitionWords, webWords } from "./transition-words.ts";

/** The sheets of one strip: drawing, edges with their three lengths, bends, marking-out table. */
export function stripSheets(
  design: Design,
  strip: Strip,
  part: Part,
  setting: StripSetting,
): readonly SheetBody[] {
  const { lettering, marks } = setting;
  const drawing = stripDrawing(design, strip, part, setting);
  const table = printedTable(design, strip, part);
  const text = (words: string) => paragraphBlock(words, CONTENT_WIDTH_MM, lettering);
  const head: readonly Block[] = [
    paragraphBlock(`${strip.id}  ${part.name}`, CONTENT_WIDTH_MM, lettering, { heightMm: 5, face: "bold" }),
    text(faceWords(design, strip, part)),
    text(cuttingBesideWords(design.project.cutting)),
    text(cautionWords(toolHazard(design.project.cutting))),
    ...(strip.slots ? [text(cautionWords("saw"))] : []),
    ...(needsBack(design, strip, part) ? [text(backWords(strip, part))] : []),
    drawing.block,
    text(diagonalWords(design, strip, part)),
    ...transitionWords(design, part).map(text),
    ...webWords(strip, part).map(text),
    ...layWords(design, strip, part, table).map(text),
    headingBlock("Edges, lengths in mm"),
    ...edgeTable(design, strip, part, lettering),
    ...markBlocks(strip, part, marks, lettering),
    ...bendTable(design, strip, part, { table, lettering }),
    ...seatBlocks(strip, part, table?.origin.u ?? 0, { widthMm: CONTENT_WIDTH_MM, lettering }),
  ];
  const usedMm = head.reduce((sum, block) => sum + block.heightMm, 0);
  const blocks =
    table === undefined ? head : [...head, ...markingBlocks({ table, strip, part }, usedMm, lettering)];
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

/** On a bevelled strip the tape lies on the face shown, as long as no edge of it has vanished there. */
function diagonalWords(design: Design, strip: Strip, part: Part): string {
  const { loops } = shownFace(strip, part.thicknessMm, design.project);
  const isWhole = loops[0]?.edges.length === strip.loops[0]?.edges.length;
  const isOnFace = hasBevels(strip) && isWhole;
  const diagonals = checkDiagonals(isOnFace ? loops : strip.loops, 3);
  if (diagonals.length === 0) return "";
  const words = diagonals.map(([a, b, length]) => `${a}–${b}: ${formatMm(length)}`).join("; ");
  return `Check by tape, corner to corner on the flat${isOnFace ? `, on the ${part.faceShown}` : ""}, mm: ${words}.`;
}

/** How a hot wire is led along both faces. */
const backWords = (strip: Strip, part: Part): string =>
  `The wire runs between two guides: one cut by template ${strip.id} on the ${part.faceShown}, one by ${backId(strip)} on the ${faceBehind(part)}. Lay both by the datum and the stations, and bring the wire to the same station on both at the same time.`;

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
  return words.length === 0 ? [] : [`Dashed, along the datum: ${[...new Set(words)].join(", ")}.`];
}

function edgeTable(design: Design, strip: Strip, part: Part, lettering: Lettering): readonly Block[] {
  const pairs = cornerPairs(strip);
  const isScarfed = (strip.tapers?.length ?? 0) > 0;
  const hasLine = hasBevels(strip) || isScarfed || isFitted(strip, "gap") || isFitted(strip, "hold");
  const figure = { widthMm: hasLine ? 18 : 20, face: "mono" as const, anchor: "end" as const };
  const columns = [
    { title: "Edge", widthMm: hasLine ? 14 : 16, face: "mono" as const },
    { title: "Name", widthMm: hasLine ? 28 : 32 },
    { title: "Meets", widthMm: hasLine ? 42 : 46 },
    { title: "Drawn", ...figure },
    { title: "In space", ...figure },
    { title: "Flat", ...figure },
    { title: "Bevel", ...figure },
    ...(hasLine ? [{ title: "Line", ...figure }] : []),
  ];
  const rows = strip.loops
    .flatMap((loop) => loop.edges)
    .map((edge, i) => {
      const measured = measuredEdge(strip, edge);
      const [from, to] = pairs[i] ?? [0, 0];
      const lengths = measured
        ? [measured.drawnLengthMm, measured.spaceLengthMm, measured.flatLengthMm].map(formatMm)
        : ["", "", ""];
      return [
        `${from}–${to}`,
        edge.name,
        edgeWords(design, strip, part, edge),
        ...lengths,
        measured === undefined ? "" : bevelAngles(measured),
        ...(hasLine && measured !== undefined ? [lineShift(measured, part, edge.spare?.lengthMm ?? 0)] : []),
      ];
    });
  const small = (words: string) => paragraphBlock(words, CONTENT_WIDTH_MM, lettering, { heightMm: 2.5 });
  return [
    ...tableBlocks(columns, rows, lettering),
    gapBlock(1.5),
    small(
      "Drawn: on the drawn face. In space and flat: at the neutral fibre, bent and laid flat; the two agree. Bevel off square, at the edge's start and end.",
    ),
    ...(hasLine
      ? [
          small(
            `Lengths are those of mid-thickness. Line: how far the line to cut by on the ${part.faceShown}, which is the face shown, lies outside (+) or inside (${MINUS}) of the outline at mid-thickness: half the thickness times the tangent of the bevel, half of a scarf, the spare of a closer, and foam that runs past. Draw that line alone, and tilt the blade by the bevel.`,
          ),
        ]
      : []),
    ...(isScarfed ? [small(SCARF_WORDS)] : []),
    ...(isFitted(strip, "gap") ? [small(FITTED_WORDS)] : []),
    ...(isFitted(strip, "hold") ? [small(PAST_WORDS)] : []),
  ];
}

const FITTED_WORDS =
  "Closer: the thick line with the spare is cut now, the thin net line inside it is where the drawing ends it. Cut to neither at last, but to the gap that you measure when the neighbours stand.";

const PAST_WORDS =
  "Runs past: cut by the thick line now. The foam between it and the thin net line lies over an outboard rib and is held down there, so that the bend keeps to its shape up to the edge. Trim it along the net line after the first skin.";

const SCARF_WORDS =
  "Scarf: cut the edge square where the line to cut by runs. Then plane or sand the face that is named from the taper's line to nothing at the edge; the two tapers lie on each other, and the glued strip is as thick as the foam.";

/** The bevel at an edge's start and end as angles; which face is longer stands beside the neighbour. */
function bevelAngles({ bevelRad: [start, end] }: PartEdge): string {
  const [first, last] = [formatAngle(Math.abs(start)), formatAngle(Math.abs(end))];
  if (first === last) return first === formatAngle(0) ? "square" : first;
  return `${first} ${last}`;
}

/** How far the line on the face shown lies outside the outline at mid-thickness, at an edge's start and end, mm. */
function lineShift({ bevelRad }: PartEdge, { thicknessMm }: Part, spareMm: number): string {
  const [first, last] = bevelRad.map((angleRad) => {
    const outsideMm = spareMm - faceShiftMm(thicknessMm, angleRad);
    const words = formatMm(outsideMm);
    return words === formatMm(0) ? words : outsideMm > 0 ? `+${words}` : words;
  });
  return first === last ? (first ?? "") : `${first} ${last}`;
}

/** The marks along the edges, measured on the flat. */
function markBlocks(
  strip: Strip,
  part: Part,
  marks: readonly EdgeMark[],
  lettering: Lettering,
): readonly Block[] {
  const words = markWords(strip, part, marks);
  if (words.length === 0) return [];
  const text = (line: string) => paragraphBlock(line, CONTENT_WIDTH_MM, lettering);
  return [
    headingBlock("Marks along the edges, mm"),
    text(
      "Marks of one number on both strips of a joint meet when it is glued. The bevel and the longer face are told where they change.",
    ),
    ...words.map(text),
  ];
}

/** The bends that lie on the strip, measured along its datum. */
function bendTable(
  design: Design,
  strip: Strip,
  part: Part,
  { table, lettering }: { readonly table: MarkingTable | undefined; readonly lettering: Lettering },
): readonly Block[] {
  // A transition bends along its rulings, which are drawn; what it needs is said above.
  if (part.kind === "transition") return [];
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
  const holds = design.holds.filter(({ partId }) => partId === part.id);
  const words = zones.flatMap((zone) => {
    const hold = holds.find(({ fromUMm }) => fromUMm === zone.fromUMm);
    const told = wordBend(zone, hold, design.project, (u) => u - start);
    if (told.length === 0) return [];
    const from = formatMm(Math.max(zone.fromUMm, first) - start);
    return [`Bend from ${from}: ${told.join(" ")}`];
  });
  return [
    headingBlock("Bends, along the datum, mm"),
    ...tableBlocks(columns, rows, lettering),
    gapBlock(1.5),
    ...words.map((line) => paragraphBlock(line, CONTENT_WIDTH_MM, lettering)),
  ];
}

/** At most this many marks stand beside each other in the table; fewer where each has its bevel. */
const MOST_OFFSETS = 6;
const MOST_BEVELLED = 3;

interface Marking {
  readonly table: MarkingTable;
  readonly strip: Strip;
  readonly part: Part;
}

function markingBlocks(marking: Marking, usedMm: number, lettering: Lettering): readonly Block[] {
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
