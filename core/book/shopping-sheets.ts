import { formatMass, formatMm, formatNumber } from "../foundation/index.ts";
import { amountWords, moneyWords, type ShoppingLine, type ShoppingList } from "../shopping/index.ts";
import type { Spread } from "../totals/index.ts";
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
import type { Design } from "./design.ts";
import type { Lettering } from "./lettering.ts";
import { CONTENT, CONTENT_WIDTH_MM, type SheetBody } from "./page-frame.ts";
import type { PaperWork } from "./paper-work.ts";
import { shoppingOf } from "./shopping-of.ts";

/** What to buy and what it adds up to. */
export function shoppingSheets(design: Design, work: PaperWork, lettering: Lettering): readonly SheetBody[] {
  const list = shoppingOf(design, work);
  const text = (words: string) => paragraphBlock(words, CONTENT_WIDTH_MM, lettering);
  const blocks: readonly Block[] = [
    headingBlock("To buy"),
    ...buyingTable(list, lettering),
    gapBlock(2),
    text(
      isLaidOut(design)
        ? "Sheets as they are laid out on the stock pages; buy one to spare of each."
        : "Sheets by area alone: the least that could do. How strips lie on the sheets can need more; buy one to spare of each.",
    ),
    text(costWords(list)),
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

/** Every line with what is there already, where anything is, and its price, where anything has one. */
function buyingTable({ lines, currency }: ShoppingList, lettering: Lettering): readonly Block[] {
  const isInStore = lines.some(({ have }) => have > 0);
  const isPriced = lines.some(({ cost }) => cost !== undefined);
  const figure = { widthMm: 21, face: "mono" as const, anchor: "end" as const };
  const columns = [
    { title: "What", widthMm: CONTENT_WIDTH_MM - 21 * (4 + Number(isInStore) + Number(isPriced)) },
    { title: "Needed", ...figure },
    ...(isInStore ? [{ title: "In store", ...figure }] : []),
    { title: "In a pack", ...figure },
    { title: "Packs", ...figure },
    { title: "Left", ...figure },
    ...(isPriced ? [{ title: currency, ...figure }] : []),
  ];
  const row = ({ name, unit, needed, have, packOf, packs, left, cost }: ShoppingLine) => [
    name,
    amountWords(needed, unit),
    ...(isInStore ? [have > 0 ? amountWords(have, unit) : ""] : []),
    amountWords(packOf, unit),
    formatNumber(packs, 0),
    amountWords(left, unit),
    ...(isPriced ? [cost === undefined ? "" : formatNumber(cost, 2)] : []),
  ];
  return tableBlocks(columns, lines.map(row), lettering);
}

/** What it costs, and what of it has no price yet. */
function costWords({ cost, currency, unpricedKeys, lines }: ShoppingList): string {
  const unpriced = lines.filter(({ key }) => unpricedKeys.includes(key)).map(({ name }) => name);
  if (unpriced.length === lines.length) return "Nothing has a price yet: type prices of packs under Buy.";
  const rest = unpriced.length === 0 ? "" : ` Without a price: ${unpriced.join("; ")}.`;
  return `All that has a price costs ${moneyWords(cost, currency)}.${rest}`;
}

/** Whether every piece lies on a sheet. */
const isLaidOut = ({ stock }: Design): boolean =>
  stock.length > 0 && stock.every(({ sheets, unplaced }) => sheets.length > 0 && unplaced.length === 0);

const squareMetres = (areaMm2: number): string => `${formatNumber(areaMm2 / 1e6, 2)} m²`;

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
