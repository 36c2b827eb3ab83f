import type { Strip } from "../cutting/index.ts";
import { at, formatMm, formatNumber } from "../foundation/index.ts";
import { type EdgeMark, hasBevels } from "../marking/index.ts";
import { CURED_GLASS_CAUTION, cutFromPanelWords } from "../panels/index.ts";
import { faceBehind, type Part } from "../patterns/index.ts";
import { backId, needsBack } from "./back-piece.ts";
import { type Block, flowBlocks, headingBlock, heightOfAll, paragraphBlock } from "./blocks.ts";
import { cautionWords } from "./cautions.ts";
import { cuttingBesideWords, toolHazard } from "./cutting-words.ts";
import type { Design } from "./design.ts";
import type { Lettering } from "./lettering.ts";
import { markWords } from "./mark-words.ts";
import { markingBlocks } from "./marking-blocks.ts";
import { CONTENT, CONTENT_WIDTH_MM, type SheetBody } from "./page-frame.ts";
import type { Piece } from "./piece.ts";
import { seatBlocks } from "./seat-table.ts";
import { bendTable } from "./strip-bend-table.ts";
import { checkDiagonals, type StripSetting, stripDrawing } from "./strip-drawing.ts";
import { edgeTable } from "./strip-edge-table.ts";
import { transitionWords, webWords } from "./transition-words.ts";

/** The sheets of one strip: drawing, edges with their three lengths, bends, marking-out table. */
export function stripSheets(
  design: Design,
  strip: Strip,
  part: Part,
  setting: StripSetting,
): readonly SheetBody[] {
  const { lettering, marks, piece } = setting;
  const drawing = stripDrawing(strip, part, setting);
  const table = piece.ofStrip?.table;
  const text = (words: string) => paragraphBlock(words, CONTENT_WIDTH_MM, lettering);
  const head: readonly Block[] = [
    paragraphBlock(`${strip.id}  ${part.name}`, CONTENT_WIDTH_MM, lettering, { heightMm: 5, face: "bold" }),
    text(faceWords(design, strip, part)),
    ...(part.panel
      ? [text(CURED_GLASS_CAUTION)]
      : [
          text(
            `${cuttingBesideWords(design.project.cutting)} ${cautionWords(toolHazard(design.project.cutting))}`,
          ),
        ]),
    ...(strip.slots ? [text(cautionWords("saw"))] : []),
    ...(needsBack(design, strip, part) ? [text(backWords(strip, part))] : []),
    drawing.block,
    text(diagonalWords(strip, part, piece)),
    ...transitionWords(design, part).map(text),
    ...webWords(strip, part).map(text),
    ...layWords(piece).map(text),
    headingBlock("Edges, lengths in mm"),
    ...edgeTable(design, strip, part, lettering),
    ...markBlocks(strip, part, marks, lettering),
    ...bendTable(design, strip, part, { table, lettering }),
    ...seatBlocks(strip, part, table?.origin.u ?? 0, { widthMm: CONTENT_WIDTH_MM, lettering }),
  ];
  const usedMm = heightOfAll(head);
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
  const stuff = part.panel ? "panel" : foam;
  const stock = design.project.stock.find((candidate) => candidate.id === strip.stockId);
  const ofPanel = cutFromPanelWords(design.panels.panels, strip.id);
  const from =
    ofPanel !== undefined
      ? `. ${ofPanel}`
      : stock === undefined
        ? ". No stock fits."
        : `, stock ${formatNumber(stock.lengthMm, 0)}\u00a0×\u00a0${formatNumber(stock.widthMm, 0)}\u00a0mm.`;
  const mirrored = part.hand === "left" ? ` The mirror image of the right one: do not turn that over.` : "";
  const across = design.project.symmetry === "mirrored" ? ", across the centre line" : "";
  const hand = part.hand === "whole" ? across : `, ${part.hand} hand`;
  return `${sentence(part.faceShown)} toward you${hand}.${mirrored} ${formatNumber(part.thicknessMm, 1)} mm ${stuff}, ${formatNumber(strip.areaMm2 / 1e6, 3)} m²${from}`;
}

const sentence = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

/** On a bevelled strip the tape lies on the face shown, as long as no edge of it has vanished there. */
function diagonalWords(strip: Strip, part: Part, { ofStrip }: Piece): string {
  const loops = ofStrip?.face.loops ?? strip.loops;
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
function layWords({ ofStrip }: Piece): readonly string[] {
  const start = ofStrip?.table?.origin.u ?? 0;
  const dashed = (ofStrip?.lays ?? []).filter(({ line }) => line.style === "hidden");
  const words = dashed.map(({ line, words: name }) => {
    const [first, last] = [at(line.points, 0), at(line.points, -1)];
    const runsAcross = Math.abs(first.x - last.x) < 0.05;
    return runsAcross ? `${name} at ${formatMm(first.x - start)}` : name;
  });
  return words.length === 0 ? [] : [`Dashed, along the datum: ${[...new Set(words)].join(", ")}.`];
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
  return [headingBlock("Marks along the edges, mm"), ...words.map(text)];
}
