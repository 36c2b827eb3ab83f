import { formatMass, formatMm, formatNumber } from "../foundation/index.ts";
import { laminateOf } from "../project/index.ts";
import { peelPlyMm } from "../skins/index.ts";
import { consumablesOf, type Spread } from "../totals/index.ts";
import {
  type Block,
  flowBlocks,
  gapBlock,
  headingBlock,
  paragraphBlock,
  tableBlocks,
  togetherBlocks,
} from "./blocks.ts";
import { heightOf } from "./boxes.ts";
import { counted } from "./counted.ts";
import type { Design } from "./design.ts";
import type { Lettering } from "./lettering.ts";
import { CONTENT, CONTENT_WIDTH_MM, type SheetBody } from "./page-frame.ts";

/** What to buy and what it adds up to. */
export function shoppingSheets(design: Design, lettering: Lettering): readonly SheetBody[] {
  const columns = [
    { title: "What", widthMm: 84 },
    { title: "Needed", widthMm: 40, face: "mono" as const, anchor: "end" as const },
    { title: "Buy at least", widthMm: 50, face: "mono" as const, anchor: "end" as const },
  ];
  const blocks: readonly Block[] = [
    headingBlock("To buy"),
    ...tableBlocks(columns, shoppingRows(design), lettering),
    gapBlock(2),
    paragraphBlock(
      isLaidOut(design)
        ? "Sheets as they are laid out on the stock pages; buy one to spare of each."
        : "Sheets by area alone: the least that could do. How strips lie on the sheets can need more; buy one to spare of each.",
      CONTENT_WIDTH_MM,
      lettering,
    ),
    ...consumableBlocks(design, lettering),
    headingBlock("What it adds up to"),
    ...tableBlocks(
      [
        { title: "What", widthMm: 84 },
        { title: "Amount", widthMm: 90, face: "mono", anchor: "end" },
      ],
      totalRows(design),
      lettering,
    ),
    ...weightBlocks(design, lettering),
  ];
  return flowBlocks(blocks, CONTENT).map((marks) => ({
    title: "Shopping list and totals",
    documentType: "shopping list",
    scale: "none",
    marks,
  }));
}

/** Whether every piece lies on a sheet. */
const isLaidOut = ({ stock }: Design): boolean =>
  stock.length > 0 && stock.every(({ sheets, unplaced }) => sheets.length > 0 && unplaced.length === 0);

/** How many sheets of a kind the layouts take; none where nothing is laid out. */
const laidCount = ({ stock }: Design, stockId: string): number =>
  stock.flatMap(({ sheets }) => sheets).filter((sheet) => sheet.stockId === stockId).length;

const squareMetres = (areaMm2: number): string => `${formatNumber(areaMm2 / 1e6, 2)} m²`;

function shoppingRows(design: Design): readonly (readonly string[])[] {
  const { totals, project } = design;
  const board = project.materials.boards.find((one) => one.id === project.jig.boardId);
  const glue = project.materials.glues.find((one) => one.id === project.glue.glueId);
  return [
    ...totals.stock.map((line) => [
      line.name,
      squareMetres(line.areaMm2),
      counted(Math.max(line.sheetsAtLeast, laidCount(design, line.stockId)), "sheet"),
    ]),
    ...design.plates.flatMap((plate) =>
      plate.parts.map((part) => [
        `${plate.metalName}, ${formatNumber(plate.thicknessMm, 1)} mm, for ${part.id}`,
        squareMetres(part.lengthMm * part.widthMm),
        `${formatNumber(Math.ceil(part.lengthMm), 0)} × ${formatNumber(Math.ceil(part.widthMm), 0)}`,
      ]),
    ),
    ...(totals.ribBoardAreaMm2 > 0
      ? [
          [
            board?.name ?? "Rib board",
            squareMetres(totals.ribBoardAreaMm2),
            counted(Math.max(totals.ribBoardsAtLeast, laidCount(design, project.jig.boardId)), "board"),
          ],
        ]
      : []),
    ...(totals.glueMassKg > 0
      ? [[glue?.name ?? "Glue", formatMass(totals.glueMassKg), formatMass(totals.glueMassKg * 2)]]
      : []),
    ...skinRows(design),
    ...panelRows(design),
  ];
}

/** Where no cloth is laid out: offcuts take so much more than the patches (common practice). */
const CLOTH_WASTE = 1.1;

/** Cloth, peel ply and mixed resin; the resin's waste is in it already. */
function skinRows({ skins, cloth, project }: Design): readonly (readonly string[])[] {
  if (skins.faces.length === 0) return [];
  return [
    ...skins.cloths.map(({ clothId, name, areaMm2 }) => {
      const laid = cloth.find((one) => one.clothId === clothId);
      const roll = laid && `${formatNumber(laid.rollMm / 1000, 1)} m of ${formatNumber(laid.widthMm, 0)} mm`;
      return [name, squareMetres(areaMm2), roll ?? squareMetres(CLOTH_WASTE * areaMm2)];
    }),
    ...(skins.peelPlyMm2 > 0
      ? [
          [
            "Peel ply",
            squareMetres(skins.peelPlyMm2),
            `${formatNumber(peelPlyMm(skins) / 1000, 1)} m of 1000 mm`,
          ],
        ]
      : []),
    [
      `${laminateOf(project).resin?.name ?? "Resin"}, mixed`,
      formatMass(skins.mixedKg),
      formatMass(skins.mixedKg),
    ],
  ];
}

/** What panels and the bonding of their fences take besides: cloth, peel ply and mixed resin. */
function panelRows({ panels: { panels, bonds }, project }: Design): readonly (readonly string[])[] {
  if (panels.length === 0) return [];
  const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);
  const cloths = panels.flatMap((panel) => panel.cloths);
  const names = [...new Set(cloths.map(({ name }) => name))];
  const tapes = bonds.filter(({ tapeMm2 }) => tapeMm2 > 0);
  const peelMm2 = sum(panels.map(({ peelPlyMm2 }) => peelPlyMm2));
  const mixedKg = sum([...panels, ...bonds].map((one) => one.mixedKg));
  const bought = (name: string, areaMm2: number) => [
    name,
    squareMetres(areaMm2),
    squareMetres(CLOTH_WASTE * areaMm2),
  ];
  return [
    ...names.map((name) =>
      bought(`${name}, for panels`, sum(cloths.filter((one) => one.name === name).map((one) => one.areaMm2))),
    ),
    ...[...new Set(tapes.map(({ tapeName }) => tapeName))].map((name) => {
      const own = tapes.filter(({ tapeName }) => tapeName === name);
      return bought(`${name}, on the bias, for tape`, sum(own.map(({ tapeMm2 }) => tapeMm2)));
    }),
    ...(peelMm2 > 0 ? [bought("Peel ply, for panels", peelMm2)] : []),
    [
      `${laminateOf(project).resin?.name ?? "Resin"}, mixed, for panels and bonding`,
      formatMass(mixedKg),
      formatMass(mixedKg),
    ],
  ];
}

function totalRows(design: Design): readonly (readonly string[])[] {
  const { totals } = design;
  return [
    ["Parts", formatNumber(totals.partCount, 0)],
    ["Strips", formatNumber(totals.stripCount, 0)],
    ["Foam area", squareMetres(totals.foamAreaMm2)],
    ["Bare foam", formatMass(totals.foamMassKg)],
    ...(design.plates.length > 0 ? [["Metal plates", formatMass(totals.metalMassKg)]] : []),
    ["Glue in joints and slots", formatMass(totals.glueMassKg)],
    ...(design.skins.faces.length > 0
      ? [
          ["Skins", formatMass(design.skins.massKg)],
          ["Skinned tray, without mounts", spreadWords(design.weight.massKg)],
        ]
      : []),
    ["Joints", `${formatNumber(totals.jointLengthMm / 1000, 2)} m`],
    ["Rib board", formatMass(totals.ribBoardMassKg)],
    ["Hands-on time to the bare shell", `${formatNumber(totals.handsOnHours, 1)} h`],
  ];
}

/** A mass as it is likely, and between which it may come out. */
const spreadWords = ({ low, likely, high }: Spread): string =>
  `${formatMass(likely)} (${formatMass(low)} to ${formatMass(high)})`;

function consumableBlocks(
  { skins, panels, glueUp, project }: Design,
  lettering: Lettering,
): readonly Block[] {
  const consumables = consumablesOf(skins, panels, glueUp, laminateOf(project).hands);
  if (consumables.length === 0) return [];
  const figure = { widthMm: 28, face: "mono" as const, anchor: "end" as const };
  return [
    headingBlock("Used up"),
    ...tableBlocks(
      [
        { title: "What", widthMm: 62 },
        { title: "Needed", ...figure },
        { title: "In a pack", ...figure },
        { title: "Packs", ...figure },
        { title: "Left", ...figure },
      ],
      consumables.map(({ name, needed, packOf, packs, left }) => [
        name,
        ...[needed, packOf, packs, left].map((count) => formatNumber(count, 0)),
      ]),
      lettering,
    ),
  ];
}

/** What every part weighs, skinned, and where the whole would balance. */
function weightBlocks({ weight }: Design, lettering: Lettering): readonly Block[] {
  if (weight.parts.length === 0) return [];
  const { x, y, z } = weight.centre;
  const figure = { widthMm: 22, face: "mono" as const, anchor: "end" as const };
  const blocks = [
    headingBlock("What each part weighs, skinned"),
    ...tableBlocks(
      [
        { title: "Part", widthMm: 20, face: "mono" },
        { title: "Foam", ...figure },
        { title: "Low", ...figure },
        { title: "Likely", ...figure },
        { title: "High", ...figure },
        { title: "x", ...figure },
        { title: "y", ...figure },
        { title: "z", ...figure },
      ],
      weight.parts.map(({ partId, foamKg, massKg, centre }) => [
        partId,
        ...[foamKg, massKg.low, massKg.likely, massKg.high].map(formatMass),
        ...[centre.x, centre.y, centre.z].map((mm) => formatNumber(mm, 0)),
      ]),
      lettering,
    ),
    gapBlock(1.5),
    paragraphBlock(
      `All in, with glue, fillets and metal (${formatMass(weight.otherKg)}): ${spreadWords(weight.massKg)}. It balances at x ${formatMm(x)}, y ${formatMm(y)}, z ${formatMm(z)} mm. Low and high are for little and much resin; a weighed coupon brings them together.`,
      CONTENT_WIDTH_MM,
      lettering,
    ),
  ];
  return togetherBlocks(blocks, heightOf(CONTENT));
}
