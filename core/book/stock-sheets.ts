import { at, formatMm, formatNumber, roundTo } from "../foundation/index.ts";
import { boardPieces } from "../jig/index.ts";
import type { PackingPoint } from "../packing/index.ts";
import { type LaidGroup, type LaidStockSheet, type StockCut, seenLengthMm } from "../stock/index.ts";
import { type Block, flowBlocks, headingBlock, paragraphBlock, tableBlocks } from "./blocks.ts";
import type { Box } from "./boxes.ts";
import { cautionWords } from "./cautions.ts";
import { counted } from "./counted.ts";
import { toolHazard } from "./cutting-words.ts";
import type { Design } from "./design.ts";
import { dimensionMarks } from "./dimensions.ts";
import { clearPlace, type Label, type LabelsAround, type LedPlace } from "./label-beside.ts";
import { laidPieceMarks } from "./laid-piece-marks.ts";
import type { Lettering } from "./lettering.ts";
import { boxMark, circleMark, lineMark, paper, textMark } from "./marks.ts";
import { CONTENT, CONTENT_WIDTH_MM, type SheetBody } from "./page-frame.ts";
import { standardScale } from "./scales.ts";
import type { Mark, PaperPoint } from "./types.ts";

/** The layout on stock: a page for each sheet, with the order to cut in; and one that names what is not laid out. */
export const stockSheets = (design: Design, lettering: Lettering): readonly SheetBody[] => [
  ...design.stock.flatMap((group) =>
    group.sheets.flatMap((sheet, index) => sheetPages({ design, group, sheet, index, lettering })),
  ),
  ...unlaidPages(design, lettering),
];

/** What has no layout, so that nobody takes the pages that are there for all of them. */
function unlaidPages({ stock }: Design, lettering: Lettering): readonly SheetBody[] {
  const unlaid = stock.filter(({ sheets }) => sheets.length === 0);
  if (unlaid.length === 0) return [];
  const text = (words: string) => paragraphBlock(words, CONTENT_WIDTH_MM, lettering);
  const blocks = [
    headingBlock("Not laid out on stock"),
    text(
      "These pieces have no place on a sheet yet, so this book has no page to cut them by. Lay them out under Stock, accept the layout, and make the book again.",
    ),
    ...unlaid.flatMap(({ name, pieceIds, standing }) => [
      headingBlock(name),
      ...(standing === "out of date"
        ? [text("Its layout was accepted for other pieces or other sheets than there are now.")]
        : []),
      text(`${counted(pieceIds.length, "piece")}: ${pieceIds.join(", ")}.`),
    ]),
  ];
  return flowBlocks(blocks, CONTENT).map((marks) => ({
    title: "Stock, not laid out",
    documentType: "stock layout",
    scale: "none",
    marks,
  }));
}

interface SheetOnPaper {
  readonly design: Design;
  readonly group: LaidGroup;
  readonly sheet: LaidStockSheet;
  readonly index: number;
  readonly lettering: Lettering;
}

function sheetPages(page: SheetOnPaper): readonly SheetBody[] {
  const { design, group, sheet, index, lettering } = page;
  const picture = sheetPicture(sheet, lettering);
  const text = (words: string) => paragraphBlock(words, CONTENT_WIDTH_MM, lettering);
  const size = `${formatMm(sheet.lengthMm)} × ${formatMm(sheet.widthMm)} mm`;
  const heading = `${group.name}: sheet ${index + 1} of ${group.sheets.length}, ${size}`;
  const blocks: readonly Block[] = [
    headingBlock(heading),
    text(figureWords(page)),
    text(cautionWords(isBoard(group, design) ? "saw" : toolHazard(design.project.cutting))),
    picture.block,
    text(
      "Lay the templates down as drawn, face and arrow as on the template; none is turned over. Mark all pieces before the first cut.",
    ),
    ...(sheet.cuts.length > 0
      ? [
          headingBlock("Cut in this order"),
          ...cutTable(sheet, `${group.name}: sheet ${index + 1} of ${group.sheets.length}`, lettering),
        ]
      : []),
  ];
  return flowBlocks(blocks, CONTENT).map((marks) => ({
    title: `Stock ${group.name}`.slice(0, 25),
    documentType: "stock layout",
    scale: `1:${picture.scale}`,
    marks,
  }));
}

function figureWords({ design, group, sheet, index }: SheetOnPaper): string {
  const { figures, sheets } = group;
  const { currency } = design.project.laying;
  const standing =
    group.standing === "laid here" ? "Laid out by the program, not yet looked at by the builder. " : "";
  const offcutMm = sheet.lengthMm - sheet.usedMm;
  const isLast = index === sheets.length - 1;
  const rest =
    isLast && offcutMm > 0 ? ` ${formatMm(offcutMm)} × ${formatMm(sheet.widthMm)} mm is left over.` : "";
  const waste = `Waste on ${counted(sheets.length, "sheet")}: ${formatNumber(100 * figures.wasteShare, 0)} %`;
  const money =
    figures.wastePrice === undefined ? "" : `, ${formatNumber(figures.wastePrice, 2)} ${currency}`;
  return `${standing}${counted(sheet.pieces.length, "piece")} on this sheet.${rest} ${waste}${money}.`;
}

/** Ribs are sawn; foam is cut by the tool of the document. */
const isBoard = ({ pieceIds }: LaidGroup, { jig }: Design): boolean =>
  boardPieces(jig).some(({ id }) => pieceIds.includes(id));

const MOST_PICTURE_MM = 110;

function sheetPicture(
  sheet: LaidStockSheet,
  lettering: Lettering,
): { readonly block: Block; readonly scale: number } {
  const { widthMm, pieces, cuts } = sheet;
  const lengthMm = seenLengthMm(sheet);
  const scale = standardScale(
    { widthMm: lengthMm, heightMm: widthMm },
    { widthMm: CONTENT_WIDTH_MM - 16, heightMm: MOST_PICTURE_MM },
  );
  const [width, height] = [lengthMm / scale, widthMm / scale];
  const draw = (corner: PaperPoint): readonly Mark[] => {
    const from = paper(corner.x + (CONTENT_WIDTH_MM - width) / 2, corner.y - height - 4);
    const seen = ({ x, y }: PackingPoint): PaperPoint => paper(from.x + x / scale, from.y + y / scale);
    const numbered = cuts.flatMap((cut, index) =>
      cut.kind === "straight" ? [{ cut, number: index + 1 }] : [],
    );
    const fixed = [
      ...edgeMarks(from, width, height, lengthMm < sheet.lengthMm),
      ...dimensionMarks(from, paper(from.x + width, from.y), -9, lengthMm),
      ...dimensionMarks(from, paper(from.x, from.y + height), 8, widthMm),
      ...numbered.map(({ cut }) => lineMark([seen(cut.from), seen(cut.to)], "fold")),
    ];
    const coded = pieces.map(({ pieceId, linesMm }) => ({ code: pieceId, linesMm }));
    const lines = fixed.filter((mark) => mark.kind === "line");
    const room = {
      left: corner.x,
      right: corner.x + CONTENT_WIDTH_MM,
      bottom: corner.y - height - 19,
      top: corner.y,
    };
    const laid = laidPieceMarks(coded, seen, { lines, labels: [], room, lettering });
    const outlines = laid.marks.filter((mark) => mark.kind === "line");
    const around = { lines: [...lines, ...outlines], labels: laid.labels, room };
    const cutLines = numbered.map(({ cut, number }) => ({ number, from: seen(cut.from), to: seen(cut.to) }));
    return [...fixed, ...laid.marks, ...numberMarks(cutLines, around)];
  };
  return { block: { heightMm: height + 20, draw }, scale };
}

/** The edges of a sheet; where it goes on beyond the picture its end is dashed. */
function edgeMarks(from: PaperPoint, width: number, height: number, goesOn: boolean): readonly Mark[] {
  if (!goesOn) return [boxMark(from, width, height, "outline")];
  const [right, top] = [from.x + width, from.y + height];
  return [
    lineMark([paper(right, from.y), from, paper(from.x, top), paper(right, top)], "outline"),
    lineMark([paper(right, from.y), paper(right, top)], "hidden"),
  ];
}

interface CutLine {
  readonly number: number;
  readonly from: PaperPoint;
  readonly to: PaperPoint;
}

/** The numbers of straight cuts, each in a circle beside its cut, with a line to an end or the middle of it. */
function numberMarks(
  cuts: readonly CutLine[],
  { lines, labels, room }: Pick<LabelsAround, "lines" | "labels"> & { readonly room: Box },
): readonly Mark[] {
  const placed: Label[] = [];
  const size = { widthMm: 2 * RING_MM + 0.6, heightMm: 2 * RING_MM + 0.6 };
  for (const { number, from, to } of cuts) {
    const halfway = paper((from.x + to.x) / 2, (from.y + to.y) / 2);
    const feet = [to, from, halfway];
    const { box, foot } = nearestPlace(feet, size, { lines, labels: [...labels, ...placed], room });
    const middle = paper((box.left + box.right) / 2, (box.bottom + box.top) / 2);
    const away = Math.hypot(foot.x - middle.x, foot.y - middle.y) || 1;
    const start = paper(
      middle.x + ((foot.x - middle.x) * RING_MM) / away,
      middle.y + ((foot.y - middle.y) * RING_MM) / away,
    );
    placed.push({
      box,
      marks: [
        circleMark(middle, RING_MM, "thin"),
        textMark(paper(middle.x, middle.y - 1.25), `${number}`, { heightMm: 2.5, anchor: "middle" }),
        lineMark([start, foot], "thin"),
      ],
    });
  }
  return placed.flatMap(({ marks }) => marks);
}

const RING_MM = 2.6;

/** Of the places of the several feet the one nearest to its own, the first of equals. */
function nearestPlace(
  feet: readonly PaperPoint[],
  size: { readonly widthMm: number; readonly heightMm: number },
  around: Omit<LabelsAround, "lettering">,
): LedPlace {
  const places = feet.map((foot) => clearPlace([foot], size, around));
  const awayMm = ({ box, foot }: LedPlace) =>
    roundTo(Math.hypot((box.left + box.right) / 2 - foot.x, (box.bottom + box.top) / 2 - foot.y), 2);
  return at(
    [...places].sort((a, b) => (awayMm(a) || Infinity) - (awayMm(b) || Infinity)),
    0,
  );
}

function cutTable(sheet: LaidStockSheet, about: string, lettering: Lettering): readonly Block[] {
  const columns = [
    { title: "No.", widthMm: 12, face: "mono" as const, anchor: "end" as const },
    { title: "Cut", widthMm: 124 },
    { title: "Length, mm", widthMm: 30, face: "mono" as const, anchor: "end" as const },
  ];
  const straight = sheet.cuts.filter((cut) => cut.kind === "straight");
  const outlines = sheet.cuts.filter((cut) => cut.kind === "outline");
  const straightRows = straight.map((cut, i) => [`${i + 1}`, straightWords(cut), formatMm(cut.lengthMm)]);
  const outlineRows = outlines.map(({ pieceId, lengthMm }, i) => [
    `${straight.length + i + 1}`,
    `around ${pieceId}`,
    formatMm(lengthMm),
  ]);
  if (outlines.length < MANY_OUTLINES)
    return tableBlocks(columns, [...straightRows, ...outlineRows], lettering, about);
  const half = Math.ceil(outlineRows.length / 2);
  const pairs = outlineRows.slice(0, half).map((row, i) => [...row, ...(outlineRows[half + i] ?? [])]);
  const narrow = columns.map((column) => (column.title === "Cut" ? { ...column, widthMm: 38 } : column));
  return [
    ...(straightRows.length > 0 ? tableBlocks(columns, straightRows, lettering, about) : []),
    ...tableBlocks([...narrow, ...narrow], pairs, lettering, about),
  ];
}

/** So many outlines stand in two columns: down the left one first, then down the right one. */
const MANY_OUTLINES = 10;

function straightWords({ from, to }: Extract<StockCut, { readonly kind: "straight" }>): string {
  return Math.abs(from.x - to.x) < 1e-9
    ? `straight across at ${formatMm(from.x)} mm from the left end`
    : `straight along at ${formatMm(from.y)} mm from the lower side, from ${formatMm(from.x)} to ${formatMm(to.x)} mm`;
}
