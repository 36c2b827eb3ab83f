import { formatMass, formatMm, formatNumber, toDegrees } from "../foundation/index.ts";
import type { PackingPoint } from "../packing/index.ts";
import {
  CURED_GLASS_CAUTION,
  type Panel,
  type PanelPlan,
  type PanelStep,
  panelWords,
} from "../panels/index.ts";
import { type PotCard, potWords } from "../skins/index.ts";
import { type Block, flowBlocks, gapBlock, headingBlock, paragraphBlock, tableBlocks } from "./blocks.ts";
import { cautionBlocks } from "./cautions.ts";
import type { Design } from "./design.ts";
import { dimensionMarks } from "./dimensions.ts";
import { laidPieceMarks } from "./laid-piece-marks.ts";
import type { Lettering } from "./lettering.ts";
import { boxMark, paper } from "./marks.ts";
import { CONTENT, CONTENT_WIDTH_MM, type SheetBody } from "./page-frame.ts";
import { standardScale } from "./scales.ts";
import type { Mark, PaperPoint } from "./types.ts";

const FIGURE = { widthMm: 26, face: "mono", anchor: "end" } as const;

/** The panels: for each its lay-up, pots, cut sheet and steps; then how the fences are bonded on. */
export function panelSheets({ panels: plan }: Design, lettering: Lettering): readonly SheetBody[] {
  return [...plan.panels.flatMap((panel) => panelPages(panel, lettering)), ...bondPages(plan, lettering)];
}

function panelPages(panel: Panel, lettering: Lettering): readonly SheetBody[] {
  const text = (words: string) => paragraphBlock(words, CONTENT_WIDTH_MM, lettering);
  const picture = cutSheet(panel, lettering);
  const [layUp, cut] = [
    panel.steps.filter(({ part }) => part === "lay-up"),
    panel.steps.filter(({ part }) => part === "cut"),
  ];
  const blocks: readonly Block[] = [
    headingBlock(`${sentence(panel.id)}: ${panel.pieces.map(({ stripId }) => stripId).join(", ")}`),
    text(panelWords(panel)),
    ...tableBlocks(
      [
        { title: "Ply, each face, from the foam", widthMm: 48 },
        { title: "Cloth", widthMm: 52 },
        { title: "Warp to its length", ...FIGURE, widthMm: 34 },
        { title: "Resin g/m²", ...FIGURE },
      ],
      panel.plies.map(({ clothName, warpRad, resinKgPerM2 }, i) => [
        `${i + 1}`,
        clothName,
        `${formatNumber(toDegrees(warpRad), 0)}°`,
        formatNumber(1000 * resinKgPerM2, 0),
      ]),
      lettering,
    ),
    ...cautionBlocks(["epoxy", "foam dust"], lettering),
    headingBlock("Laminate it on the bench"),
    ...stepBlocks(layUp, 1, lettering),
    gapBlock(1),
    ...panel.faces.flatMap(({ face, cards }) => potBlocks(`Pots of the ${face} face`, cards, lettering)),
    headingBlock("Cut sheet"),
    picture.block,
    text(CURED_GLASS_CAUTION),
    ...stepBlocks(cut, layUp.length + 1, lettering),
  ];
  return flowBlocks(blocks, CONTENT).map((marks) => ({
    title: sentence(panel.id),
    documentType: "panel",
    scale: `1:${picture.scale}`,
    marks,
  }));
}

const sentence = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

const stepBlocks = (steps: readonly PanelStep[], from: number, lettering: Lettering): readonly Block[] =>
  steps.map(({ title, why }, i) =>
    paragraphBlock(`${from + i}. ${title}. ${why}`, CONTENT_WIDTH_MM, lettering),
  );

function potBlocks(title: string, cards: readonly PotCard[], lettering: Lettering): readonly Block[] {
  if (cards.length === 0)
    return [
      paragraphBlock(
        `${title}: none is planned. This resin does not go with the shop or the foam; the problems say why.`,
        CONTENT_WIDTH_MM,
        lettering,
      ),
    ];
  return tableBlocks(
    [
      { title, widthMm: 44 },
      { title: "Mix in each", ...FIGURE },
      { title: "Resin", ...FIGURE },
      { title: "Hardener", ...FIGURE },
      { title: "Pigment", ...FIGURE },
      { title: "Spread within", ...FIGURE },
    ],
    cards.map((card) => {
      const { pots, each, resin, hardener, pigment, within } = potWords(card);
      return [pots, each, resin, hardener, pigment, within];
    }),
    lettering,
  );
}

/** The panel with what is trimmed off it (dashed) and the pieces that are sawn from it. */
function cutSheet(panel: Panel, lettering: Lettering): { readonly block: Block; readonly scale: number } {
  const { lengthMm, widthMm, edgeMm, pieces } = panel;
  const scale = standardScale(
    { widthMm: lengthMm, heightMm: widthMm },
    { widthMm: CONTENT_WIDTH_MM - 20, heightMm: 90 },
  );
  const [width, height] = [lengthMm / scale, widthMm / scale];
  const draw = (corner: PaperPoint): readonly Mark[] => {
    const from = paper(corner.x + 14, corner.y - height - 2);
    const seen = ({ x, y }: PackingPoint): PaperPoint => paper(from.x + x / scale, from.y + y / scale);
    const inner = seen({ x: edgeMm, y: edgeMm });
    const fixed = [
      boxMark(from, width, height, "outline"),
      boxMark(inner, width - (2 * edgeMm) / scale, height - (2 * edgeMm) / scale, "hidden"),
      ...dimensionMarks(from, paper(from.x + width, from.y), -7, lengthMm),
      ...dimensionMarks(from, paper(from.x, from.y + height), 8, widthMm),
    ];
    const coded = pieces.map(({ stripId, linesMm }) => ({ code: stripId, linesMm }));
    const lines = fixed.filter((mark) => mark.kind === "line");
    const room = {
      left: corner.x,
      right: corner.x + CONTENT_WIDTH_MM,
      bottom: corner.y - height - 18,
      top: corner.y,
    };
    return [...fixed, ...laidPieceMarks(coded, seen, { lines, labels: [], room, lettering }).marks];
  };
  return { block: { heightMm: height + 19, draw, keepsWithNext: true }, scale };
}

function bondPages({ bonds, bondCards, bondSteps }: PanelPlan, lettering: Lettering): readonly SheetBody[] {
  if (bonds.length === 0) return [];
  const blocks: readonly Block[] = [
    headingBlock("Bond the fences onto the finished skin"),
    ...cautionBlocks(["epoxy"], lettering),
    paragraphBlock(CURED_GLASS_CAUTION, CONTENT_WIDTH_MM, lettering),
    gapBlock(1),
    ...tableBlocks(
      [
        { title: "Fence", widthMm: 20, face: "mono" },
        { title: "Length", ...FIGURE },
        { title: "Abrade, wide", ...FIGURE },
        { title: "Under the edge", ...FIGURE },
        { title: "In both fillets", ...FIGURE },
        { title: "Tape, wide", ...FIGURE },
      ],
      bonds.map(({ partId, lengthMm, abradeMm, resinKg, filletKg, tapeWidthMm }) => [
        partId,
        formatMm(lengthMm),
        formatMm(abradeMm),
        formatMass(resinKg),
        formatMass(filletKg),
        tapeWidthMm > 0 ? formatMm(tapeWidthMm) : "none",
      ]),
      lettering,
    ),
    gapBlock(1),
    ...stepBlocks(bondSteps, 1, lettering),
    gapBlock(1),
    ...potBlocks("Pots, filler included", bondCards, lettering),
  ];
  return flowBlocks(blocks, CONTENT).map((marks) => ({
    title: "Fences bonded on",
    documentType: "panel",
    scale: "none",
    marks,
  }));
}
