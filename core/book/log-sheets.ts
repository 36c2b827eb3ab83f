import { allRibs } from "../jig/index.ts";
import { type Block, flowBlocks, gapBlock, headingBlock, paragraphBlock, tableBlocks } from "./blocks.ts";
import type { Design } from "./design.ts";
import type { Lettering } from "./lettering.ts";
import { CONTENT, CONTENT_WIDTH_MM, type SheetBody } from "./page-frame.ts";
import { firstSlots } from "./slot-trial-sheet.ts";

/** Blanks for what is measured in the work, beside what it should be, and where in the program each reading goes. */
export function logSheets(design: Design, lettering: Lettering): readonly SheetBody[] {
  if (design.parts.length === 0) return [];
  const blocks = [
    headingBlock("What was measured"),
    paragraphBlock(
      "Write down what rule, protractor and scales say, with the date. The last column says where a reading is typed so that what follows is computed from it.",
      CONTENT_WIDTH_MM,
      lettering,
    ),
    ...readings(
      "Print",
      [
        ["bar across the page", "200.0 mm", "Print, After a test print"],
        ["bar down the page", "200.0 mm", "Print, After a test print"],
        ["square, both diagonals", "141.4 mm", "equal, or the printer shears: another printer"],
        ["humidity and temperature of the shop", "", "Skin, Shop"],
      ],
      lettering,
    ),
    ...readings(
      "Cutting",
      [
        ["kerf, mean of five cuts", `${design.project.cutting.kerfMm.toFixed(1)} mm`, "Stock, Cutting"],
        ...(firstSlots(design)
          ? [["slot trial, closed by, degrees", "see its sheet", "Sheets, Trial of three slots"] as const]
          : []),
        ["thickness of the foam, four corners", "", "Stock, Foam"],
      ],
      lettering,
    ),
    ...readings(
      "Gaps",
      [
        ["closers: gap at both ends and the middle", "", "cut to the gap, not to the drawing"],
        ["glued joints: widest gap", `${design.project.glue.gapMm.toFixed(1)} mm`, "Glue, Glue"],
      ],
      lettering,
    ),
    ...readings(
      "Skins",
      [
        ["coupon: dry mass, cured mass", "", "Skin, Weighed coupons"],
        ["resin left in each pot", "", "Skin, Resin"],
        ["mass of the finished tray", "", ""],
      ],
      lettering,
    ),
    ...ribBlocks(design, lettering),
  ];
  return flowBlocks(blocks, CONTENT).map((marks) => ({
    title: "What was measured",
    documentType: "log",
    scale: "none",
    marks,
  }));
}

const COLUMNS = [
  { title: "Reading", widthMm: 58 },
  { title: "Should be", widthMm: 28 },
  { title: "Measured", widthMm: 34 },
  { title: "Date", widthMm: 20 },
  { title: "Typed in under", widthMm: 34 },
];

const readings = (
  title: string,
  rows: readonly (readonly [string, string, string])[],
  lettering: Lettering,
): readonly Block[] => [
  headingBlock(title),
  ...tableBlocks(
    COLUMNS,
    rows.map(([reading, target, place]) => [reading, target, "", "", place]),
    lettering,
  ),
  gapBlock(1),
];

/** One row for every rib of jig and cradle, as set up. */
function ribBlocks(design: Design, lettering: Lettering): readonly Block[] {
  const ribs = allRibs(design.jig);
  if (ribs.length === 0) return [];
  const columns = [
    { title: "Rib", widthMm: 20, face: "mono" as const },
    { title: "Height, left end", widthMm: 38 },
    { title: "Height, middle", widthMm: 38 },
    { title: "Height, right end", widthMm: 38 },
    { title: "Plumb, date", widthMm: 40 },
  ];
  return [
    headingBlock("Ribs as set up, heights above the baseboard (should be: their sheets)"),
    ...tableBlocks(
      columns,
      ribs.map(({ id }) => [id, "", "", "", ""]),
      lettering,
    ),
  ];
}
