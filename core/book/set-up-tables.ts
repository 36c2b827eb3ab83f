import { formatAngle, formatMm, formatNumber } from "../foundation/index.ts";
import { type RibSet, wordInPlace, wordRelease } from "../jig/index.ts";
import { besideColumns } from "./beside-columns.ts";
import { type Block, headingBlock, heightOfAll, paragraphBlock, tableBlocks } from "./blocks.ts";
import { heightOf } from "./boxes.ts";
import type { Lettering } from "./lettering.ts";
import { CONTENT, CONTENT_WIDTH_MM } from "./page-frame.ts";

const MONO = { face: "mono" } as const;
const MONO_END = { face: "mono", anchor: "end" } as const;

/** How a set of ribs is set up: the board, the order of the ribs, slots and packing, and how the shell comes off. */
export const setUpBlocks = (set: RibSet, standName: string, lettering: Lettering): readonly Block[] => [
  headingBlock("Setting up"),
  paragraphBlock(boardWords(set), CONTENT_WIDTH_MM, lettering),
  paragraphBlock(SET_UP_WORDS, CONTENT_WIDTH_MM, lettering),
  ...wordInPlace(set.fenceStands).map((words) => paragraphBlock(words, CONTENT_WIDTH_MM, lettering)),
  ...orderTable(set, lettering),
  ...slotTable(set, lettering),
  ...shimTable(set, lettering),
  headingBlock("Lifting off"),
  paragraphBlock(wordRelease(set.release, standName).join(" "), CONTENT_WIDTH_MM, lettering),
];

const SET_UP_WORDS =
  "Tack the ribs, true them by string and by the two diagonals, then fix: screws through the board or a block beside each, on its body's side, never on the line. Stand each plumb by a square, and brace it by a strut to the next where no rib along holds it. Lay a batten over them and look along it for highs and lows. Each rib's station face stands on its line; its body lies on the side that the thin outline shows.";

function boardWords({ baseboard }: RibSet): string {
  const { corners, sheets, thicknessMm, square, attitude, levelZMm } = baseboard;
  const size = (a: { readonly x: number; readonly y: number }, b: typeof a) =>
    `${formatMm(Math.abs(b.x - a.x))} × ${formatMm(Math.abs(b.y - a.y))}`;
  const of = sheets.map(({ id, corners: [a, b] }) => `${id} ${size(a, b)}`).join(", ");
  const made = sheets.length > 1 ? ` of ${sheets.length} sheets, with a batten under every joint: ${of}` : "";
  return `Baseboard ${size(corners[0], corners[1])} mm, ${formatMm(thicknessMm)} mm thick${made}. Heights of ribs count from its upper face, which is at z ${formatMm(levelZMm)} ${attitude === "upright" ? "over the ground that the tray is drawn on" : "of the drawing turned upside down"}. ${centreWords(baseboard)} Measure across both pairs of corner marks, 20 mm inside the corners: each is ${formatMm(square.diagonalMm)} mm; they may differ by 3 mm on 3 m, no more.`;
}

/** Where the line lies that everything across is counted from. */
function centreWords({ corners: [least, most] }: RibSet["baseboard"]): string {
  const leftMm = -least.y;
  return leftMm > 0 && most.y > 0
    ? `Mark the centre line by a taut string, ${formatMm(leftMm)} mm from the edge on the left hand of the tray, and the rib lines square to it, by their distance from the front edge. Places along a rib across count from the centre line, less than 0 toward the tray's left hand.`
    : `The edge on the left hand of the tray is at y ${formatMm(least.y)}: places along a rib across count in y. Mark the rib lines square to that edge, by their distance from the front edge.`;
}

function orderTable({ assembly, ribs }: RibSet, lettering: Lettering): readonly Block[] {
  if (assembly.every(({ over }) => over.length === 0)) return [];
  const columns = [
    { title: "Order", widthMm: 14, ...MONO_END },
    { title: "Rib", widthMm: 20, ...MONO },
    { title: "Comes straight down over", widthMm: 60, ...MONO },
    { title: "Slots", widthMm: 80 },
  ];
  const rows = assembly.map(({ ribId, over }, i) => {
    const laps = ribs.find(({ id }) => id === ribId)?.laps ?? [];
    const at = laps.map(({ fromMm, toMm }) => formatMm((fromMm + toMm) / 2)).join(", ");
    const from = laps[0]?.from === "below" ? "from below" : "from above";
    return [
      formatNumber(i + 1, 0),
      ribId,
      over.length > 0 ? over.join(" ") : "stands on its line",
      laps.length > 0 ? `${from}, middles at ${at}` : "",
    ];
  });
  return [headingBlock("Order in which the ribs go together, mm"), ...tableBlocks(columns, rows, lettering)];
}

function slotTable({ baseboard }: RibSet, lettering: Lettering): readonly Block[] {
  const { slots, corners } = baseboard;
  if (slots.length === 0) return [];
  const [least] = corners;
  const columns = [
    { title: "Slot for", widthMm: 22, ...MONO },
    { title: "From front edge", widthMm: 32, ...MONO_END },
    { title: "to", widthMm: 24, ...MONO_END },
    { title: "From left edge", widthMm: 32, ...MONO_END },
    { title: "to", widthMm: 24, ...MONO_END },
  ];
  const rows = slots.map(({ ribId, corners: [a, b] }) => [
    ribId,
    formatMm(a.x - least.x),
    formatMm(b.x - least.x),
    formatMm(a.y - least.y),
    formatMm(b.y - least.y),
  ]);
  return [headingBlock("Slots in the board for the tabs, mm"), ...tableBlocks(columns, rows, lettering)];
}

function shimTable({ baseboard }: RibSet, lettering: Lettering): readonly Block[] {
  const { shims } = baseboard;
  if (shims.length === 0) return [];
  const columns = [
    { title: "Rib", widthMm: 22, ...MONO },
    { title: "x", widthMm: 26, ...MONO_END },
    { title: "y", widthMm: 26, ...MONO_END },
    { title: "Board over its level", widthMm: 40, ...MONO_END },
    { title: "Packing under a level foot", widthMm: 48, ...MONO_END },
  ];
  const rows = shims.map(({ ribId, at: p, boardMm, packingMm }) => [
    ribId,
    formatMm(p.x),
    formatMm(p.y),
    formatMm(boardMm),
    formatMm(packingMm),
  ]);
  return [
    headingBlock("The board as measured, mm"),
    paragraphBlock(
      "Templates have the board's heights in their feet already. Only a rib that was cut for a level board gets the packing.",
      CONTENT_WIDTH_MM,
      lettering,
    ),
    ...tableBlocks(columns, rows, lettering),
  ];
}

/** For a builder who sets posts in place of ribs: where each stands, its height, and how its top slopes. */
export function postBlocks({ posts }: RibSet, lettering: Lettering): readonly Block[] {
  if (posts.length === 0) return [];
  const columns = [
    { title: "Post", widthMm: 18, ...MONO },
    { title: "On", widthMm: 18, ...MONO },
    { title: "x", widthMm: 22, ...MONO_END },
    { title: "y", widthMm: 22, ...MONO_END },
    { title: "Height at middle", widthMm: 32, ...MONO_END },
    { title: "Rises to the rear", widthMm: 30, ...MONO_END },
    { title: "Rises to the right", widthMm: 32, ...MONO_END },
  ];
  const rows = posts.map(({ id, ribId, at: p, heightMm, slopeAlongRad, slopeAcrossRad }) => [
    id,
    ribId,
    formatMm(p.x),
    formatMm(p.y),
    formatMm(heightMm),
    formatAngle(slopeAlongRad),
    formatAngle(slopeAcrossRad),
  ]);
  const head: readonly Block[] = [
    headingBlock("Posts, where no ribs are cut, mm"),
    {
      ...paragraphBlock(
        "Heights are over the board at the middle of the post; the top slopes as told, in the car's directions.",
        CONTENT_WIDTH_MM,
        lettering,
      ),
      keepsWithNext: true,
    },
  ];
  const roomMm = heightOf(CONTENT) - heightOfAll(head);
  return [...head, ...besideColumns(columns, rows, { roomMm, freshMm: roomMm, lettering })];
}

/** Fences that stand in the jig before the sheets: how high they are blocked. */
export function fenceStandBlocks({ fenceStands }: RibSet, lettering: Lettering): readonly Block[] {
  const columns = [
    { title: "Along the fence", widthMm: 34, ...MONO_END },
    { title: "x", widthMm: 26, ...MONO_END },
    { title: "y", widthMm: 26, ...MONO_END },
    { title: "Lower edge of foam", widthMm: 38, ...MONO_END },
    { title: "Upper edge, middle", widthMm: 38, ...MONO_END },
  ];
  return fenceStands.flatMap(({ partId, stations }) => [
    headingBlock(`Fence ${partId}: heights over the board, mm`),
    ...tableBlocks(
      columns,
      stations.map(({ alongMm, at: p, lowerMm, upperMm }) => [
        formatMm(alongMm),
        formatMm(p.x),
        formatMm(p.y),
        formatMm(lowerMm),
        formatMm(upperMm),
      ]),
      lettering,
    ),
  ]);
}
