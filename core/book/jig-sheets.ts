import { baseboardPlan, positionTable } from "./baseboard-plan.ts";
import { type Block, flowBlocks, gapBlock, headingBlock, paragraphBlock } from "./blocks.ts";
import { cautionBlocks } from "./cautions.ts";
import type { Design } from "./design.ts";
import { holdBlocks } from "./hold-table.ts";
import type { Lettering } from "./lettering.ts";
import { CONTENT, CONTENT_WIDTH_MM, type SheetBody } from "./page-frame.ts";
import { ribGroups } from "./rib-piece.ts";
import { cuttingList, ribBlocks } from "./rib-tables.ts";
import type { Mark } from "./types.ts";

/** The jig: baseboard plan, where every rib stands, the cutting list, and the heights of each rib. */
export function jigSheets(design: Design, lettering: Lettering): readonly SheetBody[] {
  const { ribs } = design.jig;
  if (ribs.length === 0) return [];
  const groups = ribGroups(design);
  const plan = baseboardPlan(design, design.jig, lettering);
  const first: readonly Block[] = [
    headingBlock(`Baseboard from above, jig ${design.jig.baseboard.attitude}, front to the left`),
    plan.block,
    paragraphBlock(attitudeWords(design), CONTENT_WIDTH_MM, lettering),
    headingBlock("Ribs and where they stand, mm"),
    ...positionTable(design.jig, lettering),
    ...cuttingList(groups, lettering),
    ...holdBlocks(design, lettering),
    gapBlock(3),
    ...cautionBlocks(["saw"], lettering),
  ];
  const shaped = groups.filter((group) => !group.rib.straightTop);
  const heights = shaped.flatMap((group) => ribBlocks(group, lettering));
  return [
    ...flowBlocks(first, CONTENT).map((marks) => body("Jig", `1:${plan.scale}`, marks)),
    ...(heights.length === 0
      ? []
      : flowBlocks(heights, CONTENT).map((marks) => body("Rib heights", "as noted", marks))),
  ];
}

const body = (title: string, scale: string, marks: readonly Mark[]): SheetBody => ({
  title,
  documentType: "jig",
  scale,
  marks,
});

function attitudeWords(design: Design): string {
  const { attitude } = design.jig.baseboard;
  const turned =
    attitude === "upright"
      ? "The ribs stand under the air face; the car's ground is below the baseboard."
      : "The tray lies upside down: ribs under its upper face, what faces the ground looks up.";
  return `${turned} Tack the ribs, true them by string and by the two diagonals, then fix. Lay a batten over them and look along it for highs and lows. Each rib's station face stands on its line; the body goes the way the face does not look.`;
}
