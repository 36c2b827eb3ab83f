import { at, formatAngle, formatMass, formatMm, formatNumber } from "../foundation/index.ts";
import {
  bondPreparation,
  type FoldedPlate,
  type FoldingStep,
  type PlatePart,
  type PlateUnderFoam,
  plateUnderFoam,
  RAMP_RATIO,
} from "../plates/index.ts";
import { type Block, flowBlocks, gapBlock, headingBlock, paragraphBlock, tableBlocks } from "./blocks.ts";
import { cautionWords } from "./cautions.ts";
import type { Design } from "./design.ts";
import type { Lettering } from "./lettering.ts";
import { CONTENT, CONTENT_WIDTH_MM, type SheetBody } from "./page-frame.ts";
import { plateDrawing } from "./plate-drawing.ts";

const MONO_END = { face: "mono", anchor: "end" } as const;

/** The sheets of a plate: for each hand its flat with bends and corners, then how it is folded and bonded. */
export function plateSheets(design: Design, plate: FoldedPlate, lettering: Lettering): readonly SheetBody[] {
  const flats = plate.parts.flatMap((part) => {
    const drawing = plateDrawing(plate, part, lettering);
    const blocks = flatBlocks(plate, part, drawing.block, lettering);
    return flowBlocks(blocks, CONTENT).map((marks) => ({
      title: `Plate ${part.id}`,
      documentType: "plate",
      scale: `1:${drawing.scale}`,
      marks,
    }));
  });
  const work = [...foldingBlocks(plate, lettering), ...foamBlocks(design, plate, lettering)];
  return [
    ...flats,
    ...flowBlocks(work, CONTENT).map((marks) => ({
      title: `Plate ${plate.id}: folding and bonding`,
      documentType: "plate",
      scale: "none",
      marks,
    })),
  ];
}

function flatBlocks(
  plate: FoldedPlate,
  part: PlatePart,
  drawing: Block,
  lettering: Lettering,
): readonly Block[] {
  const text = (words: string) => paragraphBlock(words, CONTENT_WIDTH_MM, lettering);
  return [
    paragraphBlock(`${part.id}  ${plate.name}`, CONTENT_WIDTH_MM, lettering, { heightMm: 5, face: "bold" }),
    text(faceWords(plate, part)),
    ...(part.bends.length === 0 ? [] : [text(PENCIL_WORDS)]),
    text(cautionWords("metal edges")),
    drawing,
    ...bendTable(part, lettering),
    ...cornerTable(part, lettering),
  ];
}

/** A scratch along a bend is where it cracks: the first rule of the trade. */
const PENCIL_WORDS =
  "Chain lines are the middles of the bends; the thin lines beside them show where each bend begins and ends. Draw all three in pencil. Never scribe them: metal cracks along a scratch on the outside of a bend. Scribe only what is cut.";

function faceWords(plate: FoldedPlate, part: PlatePart): string {
  const hand = { right: " Right hand.", left: " Left hand.", whole: "" }[part.hand];
  const mirrored =
    part.hand === "left"
      ? " This is the mirror image of the right hand: do not turn the right-hand flat over."
      : "";
  return `Drawn with the upper face toward you.${hand}${mirrored} ${formatMm(plate.thicknessMm)} mm ${plate.metalName}, blank ${formatMm(part.lengthMm)} × ${formatMm(part.widthMm)} mm, ${formatNumber(plate.flatAreaMm2 / 1e6, 3)} m², ${formatMass(plate.massKg)}.`;
}

function bendTable(part: PlatePart, lettering: Lettering): readonly Block[] {
  if (part.bends.length === 0) {
    return [paragraphBlock("This plate stays flat.", CONTENT_WIDTH_MM, lettering)];
  }
  const columns = [
    { title: "Bend", widthMm: 27 },
    { title: "Way", widthMm: 13 },
    { title: "Angle", widthMm: 17, ...MONO_END },
    { title: "R in", widthMm: 14, ...MONO_END },
    { title: "K", widthMm: 14, ...MONO_END },
    { title: "Allow.", widthMm: 17, ...MONO_END },
    { title: "Deduct", widthMm: 17, ...MONO_END },
    { title: "Set-back", widthMm: 21, ...MONO_END },
    { title: "Middle", widthMm: 17, ...MONO_END },
    { title: "Length", widthMm: 17, ...MONO_END },
  ];
  const rows = part.bends.map(({ name, figures, lengthMm }) => [
    name,
    figures.direction,
    formatAngle(figures.angleRad),
    formatMm(figures.insideRadiusMm),
    formatNumber(figures.kFactor, 3),
    formatNumber(figures.allowanceMm, 2),
    formatNumber(figures.deductionMm, 2),
    formatMm(figures.setBackMm),
    formatMm(figures.flangeMm + figures.allowanceMm / 2),
    formatMm(lengthMm),
  ]);
  const typed = part.bends.some(({ figures }) => figures.kFactorFrom === "typed deduction");
  const origin = typed
    ? "Where a deduction was measured on a trial bend it stands, and K follows from it. "
    : "Bend a trial strip first: measure both legs outside, less its flat length, and type in that deduction where it differs. ";
  return [
    headingBlock("Bends, mm"),
    ...tableBlocks(columns, rows, lettering),
    gapBlock(1.5),
    paragraphBlock(
      `Up is toward you, away from the ground. Allowance: what the bend takes of the flat. Deduction: both outside lengths less the flat. Set-back: from the corner of the outer faces to where the bend begins. Middle: from the wing's free edge in to the chain line. ${origin}Cuts at the ends of bends are as drawn.`,
      CONTENT_WIDTH_MM,
      lettering,
      { heightMm: 2.5 },
    ),
  ];
}

/** More corners than this are left to the template. */
const MOST_CORNERS = 60;

/** Where the corners of the flat lie, from the front and the left-most end of the blank. */
function cornerTable(part: PlatePart, lettering: Lettering): readonly Block[] {
  const points = part.loops.flatMap(({ edges }) => edges.flatMap((edge) => edge.points));
  const front = Math.min(...points.map(({ u }) => u));
  const left = Math.min(...points.map(({ v }) => v));
  const corners = part.loops.flatMap(({ edges }) =>
    edges.flatMap(({ role, points: along }) => (role === "base" ? [at(along, 0)] : along.slice(0, -1))),
  );
  if (corners.length > MOST_CORNERS) return [];
  const cells = corners.map(({ u, v }) => [formatMm(u - front), formatMm(v - left)]);
  const perRow = 4;
  const columns = Array.from({ length: perRow }, () => [
    { title: "Back", widthMm: 21, ...MONO_END },
    { title: "Right", widthMm: 21, ...MONO_END },
  ]).flat();
  const rows = Array.from({ length: Math.ceil(cells.length / perRow) }, (_, i) =>
    cells.slice(i * perRow, (i + 1) * perRow).flat(),
  );
  return [
    headingBlock("Corners of the flat, mm from the blank's front and left"),
    ...tableBlocks(columns, rows, lettering),
  ];
}

function foldingBlocks(plate: FoldedPlate, lettering: Lettering): readonly Block[] {
  if (plate.folding.length === 0) return [];
  const columns = [
    { title: "", widthMm: 10, ...MONO_END },
    { title: "Bend", widthMm: 50 },
    { title: "Why now", widthMm: 114 },
  ];
  const rows = plate.folding.map((step, i) => [String(i + 1), step.name, whyWords(step)]);
  return [
    headingBlock(`${plate.id}: folding order`),
    ...tableBlocks(columns, rows, lettering),
    gapBlock(1.5),
    paragraphBlock(
      "Fold over a bar with the bend's inside radius on its edge; bend a few degrees over, let go, and measure: metal springs back. Where there is a choice, lay the blank so that bends run across the rolling marks: along them metal cracks sooner.",
      CONTENT_WIDTH_MM,
      lettering,
    ),
  ];
}

function whyWords({ reason, reasonNames, blockedByNames }: FoldingStep): string {
  const names = reasonNames.join(", ");
  const words = {
    "only bend": "The only bend.",
    "shorter flange": "Its flange is shorter than those to come: what is folded stays small.",
    "shorter bend": "Its bend is shorter than those to come.",
    "as drawn": "As good as the next; in the order drawn.",
    "last left": "The last one left.",
    "leans over": `It will lean over ${names}, which had to come first.`,
    "before a leaning wing": `Before ${names}, which will lean over it.`,
  }[reason];
  const blocked =
    blockedByNames.length === 0
      ? ""
      : ` ${blockedByNames.join(", ")} leans over this bend: there is no room for a straight bar; fold it by hand over a block.`;
  return `${words}${blocked}`;
}

function foamBlocks(design: Design, plate: FoldedPlate, lettering: Lettering): readonly Block[] {
  const item = design.project.items.find(({ id }) => id === plate.itemId);
  if (item?.kind !== "plate") return [];
  const text = (words: string) => paragraphBlock(words, CONTENT_WIDTH_MM, lettering);
  return [
    headingBlock(`${plate.id}: under the foam`),
    text(foamWords(plate, plateUnderFoam(design.project, item), item.bond.lineMm)),
    headingBlock(`${plate.id}: bonding`),
    ...bondPreparation(item.bond.lineMm).flatMap(({ title, words, hazards }, i) => [
      paragraphBlock(`${i + 1}  ${title}`, CONTENT_WIDTH_MM, lettering, { face: "bold" }),
      text(words),
      ...hazards.map((hazard) => text(cautionWords(hazard))),
      gapBlock(1),
    ]),
  ];
}

function foamWords(plate: FoldedPlate, under: PlateUnderFoam, lineMm: number): string {
  const stands = `The plate takes the place of the lower skin: foam over it stands ${formatMm(under.foamOverPlateMm)} mm above the air side (${formatMm(plate.thicknessMm)} mm metal, ${formatMm(lineMm)} mm bond line), foam beside it ${formatMm(under.foamBesideMm)} mm (lower skin). `;
  const { measure } = under;
  switch (measure.kind) {
    case "none":
      return `${stands}There is no step.`;
    case "rebate":
      return `${stands}Step ${formatMm(under.stepMm)} mm: cut a rebate ${formatMm(measure.depthMm)} mm deep into the lower face of the foam ${measure.where}.`;
    case "shim":
      return `${stands}Step ${formatMm(under.stepMm)} mm: pack the foam ${measure.where} with a shim ${formatMm(measure.thicknessMm)} mm thick.`;
    case "ramp":
      return `${stands}Step ${formatMm(under.stepMm)} mm: fill under the foam ${measure.where} with a ramp that runs out from ${formatMm(measure.heightMm)} mm to nothing over ${formatMm(measure.lengthMm)} mm (${RAMP_RATIO} : 1).`;
  }
}
