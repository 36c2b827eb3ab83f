import { formatMm, formatNumber } from "../foundation/index.ts";
import type { PackingPoint } from "../packing/index.ts";
import { type LaidCloth, type LaidClothLength, peelPlyMm } from "../skins/index.ts";
import { type Block, flowBlocks, gapBlock, headingBlock, paragraphBlock } from "./blocks.ts";
import { counted } from "./counted.ts";
import type { Design } from "./design.ts";
import { dimensionMarks } from "./dimensions.ts";
import { laidPieceMarks } from "./laid-piece-marks.ts";
import type { Lettering } from "./lettering.ts";
import { boxMark, lineMark, paper, placeMark } from "./marks.ts";
import { CONTENT, CONTENT_WIDTH_MM, type SheetBody } from "./page-frame.ts";
import { standardScale } from "./scales.ts";
import type { Mark, PaperPoint } from "./types.ts";

/** The cloth plan: every patch on its roll, length by length as it is cut off; none where no cloth is laid out. */
export function clothSheets(design: Design, lettering: Lettering): readonly SheetBody[] {
  if (design.cloth.length === 0) return [];
  const text = (words: string) => paragraphBlock(words, CONTENT_WIDTH_MM, lettering);
  const scale = scaleOf(design.cloth);
  const blocks: readonly Block[] = [
    text(
      "Cut every piece before any resin is opened. They are drawn with the outer side of the cloth up, the warp along the roll. Write the code on a piece of tape on that side, with an arrow along the warp toward the front of the roll; roll the pieces up in the order in which they are laid.",
    ),
    text(
      "Glass cloth sheds fibres that prick the skin and irritate eyes and lungs: gloves, goggles, long sleeves, and a mask where it is cut. Sweep it wet.",
    ),
    ...design.cloth.flatMap((cloth) => clothBlocks(cloth, scale, lettering)),
    ...(design.skins.peelPlyMm2 > 0
      ? [
          text(
            `Peel ply: about ${formatNumber(peelPlyMm(design.skins) / 1000, 1)} m off a roll of 1 m, a tenth more than the faces. Cut it as the last ply of each field, 20 mm larger on every side; it may lie in any direction.`,
          ),
        ]
      : []),
  ];
  return flowBlocks(blocks, CONTENT).map((marks) => ({
    title: "Cloth plan",
    documentType: "cloth plan",
    scale: `1:${scale}`,
    marks,
  }));
}

/** One scale for every length, so that they compare. */
const scaleOf = (cloths: readonly LaidCloth[]): number =>
  standardScale(
    {
      widthMm: Math.max(...cloths.flatMap(({ lengths }) => lengths.map(({ lengthMm }) => lengthMm))),
      heightMm: Math.max(...cloths.map(({ widthMm }) => widthMm)),
    },
    { widthMm: CONTENT_WIDTH_MM - 16, heightMm: 80 },
  );

function clothBlocks(cloth: LaidCloth, scale: number, lettering: Lettering): readonly Block[] {
  const text = (words: string) => paragraphBlock(words, CONTENT_WIDTH_MM, lettering);
  return [
    headingBlock(`${cloth.name}, roll of ${formatMm(cloth.widthMm)} mm`),
    text(
      `${formatNumber(cloth.rollMm / 1000, 2)} m off the roll in ${counted(cloth.lengths.length, "length")}; ${formatNumber(100 * cloth.wasteShare, 0)} % of it is offcut and selvedge.`,
    ),
    ...(cloth.unplaced.length > 0
      ? [text(`These do not fit the roll and are not drawn: ${cloth.unplaced.join(", ")}.`)]
      : []),
    ...cloth.lengths.flatMap((length, i) => [
      headingBlock(`Length ${i + 1}: cut off at ${formatMm(length.lengthMm)} mm`),
      ...lengthBlocks(cloth, length, scale, lettering),
      text(length.pieces.map(({ patchId }) => patchId).join(", ")),
      gapBlock(2),
    ]),
  ];
}

/** A length off the roll with its pieces, and what the numbers in it are. */
function lengthBlocks(
  { widthMm }: LaidCloth,
  { lengthMm, pieces }: LaidClothLength,
  scale: number,
  lettering: Lettering,
): readonly Block[] {
  const [width, height] = [lengthMm / scale, widthMm / scale];
  const drawn = (corner: PaperPoint) => {
    const from = paper(corner.x + 12, corner.y - height - 2);
    const seen = ({ x, y }: PackingPoint): PaperPoint => paper(from.x + x / scale, from.y + y / scale);
    const fixed = [
      boxMark(from, width, height, "outline"),
      ...dimensionMarks(from, paper(from.x + width, from.y), -7, lengthMm),
      ...dimensionMarks(from, paper(from.x, from.y + height), 8, widthMm),
      ...warpArrow(paper(from.x, from.y + height + 1.2)),
    ];
    const coded = pieces.map(({ patchId, linesMm }) => ({ code: patchId, linesMm }));
    const lines = fixed.filter((mark) => mark.kind === "line");
    const room = {
      left: corner.x,
      right: corner.x + CONTENT_WIDTH_MM,
      bottom: corner.y - height - 17,
      top: corner.y,
    };
    const laid = laidPieceMarks(coded, seen, { lines, labels: [], room, lettering }, "number");
    return { marks: [...fixed, ...laid.marks], numbered: laid.numbered };
  };
  // Drawn once and moved: which pieces are numbered must not hang on where the block comes to lie.
  const { marks, numbered } = drawn(paper(0, 0));
  const draw = (corner: PaperPoint): readonly Mark[] =>
    marks.map((mark) => placeMark(mark, { quarterTurned: false, scaleX: 1, scaleY: 1, move: corner }));
  return [
    { heightMm: height + 18, draw, keepsWithNext: true },
    ...(numbered.length === 0
      ? []
      : [
          {
            ...paragraphBlock(numberWords(numbered), CONTENT_WIDTH_MM, lettering),
            keepsWithNext: true as const,
          },
        ]),
  ];
}

const numberWords = (numbered: readonly string[]): string =>
  `By number: ${numbered.map((code, i) => `${i + 1}\u00a0is\u00a0${code}`).join(", ")}.`;

/** An arrow along the warp, over the beginning of the roll. */
const warpArrow = (from: PaperPoint): readonly Mark[] => [
  lineMark([from, paper(from.x + 14, from.y)], "thin"),
  lineMark(
    [paper(from.x + 12, from.y + 0.8), paper(from.x + 14, from.y), paper(from.x + 12, from.y - 0.8)],
    "thin",
  ),
];
