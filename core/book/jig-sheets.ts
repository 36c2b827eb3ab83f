import { formatMm } from "../foundation/index.ts";
import { type RibSet, wordAttitude, wordOverBend, wordPast, wordPlanked } from "../jig/index.ts";
import { baseboardPlan, positionTable } from "./baseboard-plan.ts";
import { type Block, flowBlocks, gapBlock, headingBlock, paragraphBlock } from "./blocks.ts";
import { cautionBlocks } from "./cautions.ts";
import type { Design } from "./design.ts";
import { holdBlocks } from "./hold-table.ts";
import type { Lettering } from "./lettering.ts";
import { CONTENT, CONTENT_WIDTH_MM, type SheetBody } from "./page-frame.ts";
import type { SpaceShape } from "./plan-shapes.ts";
import { ribGroups } from "./rib-piece.ts";
import { cuttingList, ribBlocks, ribHeightsWords } from "./rib-tables.ts";
import { fenceStandBlocks, postBlocks, setUpBlocks } from "./set-up-tables.ts";
import type { Mark } from "./types.ts";

/**
 * The jig and its cradle: baseboard plan, where every rib stands, how they are set up and how the shell comes off, the
 * cutting list, the heights of each rib, of fences that stand first, and of posts in place of ribs.
 */
export function jigSheets(
  design: Design,
  shapes: readonly SpaceShape[],
  lettering: Lettering,
): readonly SheetBody[] {
  const { jig } = design;
  if (jig.ribs.length === 0) return [];
  return [
    ...standSheets(design, { set: jig, name: "jig", title: "Jig", shapes }, lettering),
    ...(jig.cradle === undefined
      ? []
      : standSheets(design, { set: jig.cradle, name: "cradle", title: "Cradle", shapes }, lettering)),
  ];
}

interface StandPages {
  readonly set: RibSet;
  readonly name: "jig" | "cradle";
  readonly title: string;
  readonly shapes: readonly SpaceShape[];
}

function standSheets(
  design: Design,
  { set, name, title, shapes }: StandPages,
  lettering: Lettering,
): readonly SheetBody[] {
  const groups = ribGroups(design).filter(({ rib }) => rib.stand === name);
  const plan = baseboardPlan(shapes, set, lettering);
  const first: readonly Block[] = [
    headingBlock(`Baseboard from above, ${name} ${set.baseboard.attitude}, front to the left`),
    plan.block,
    paragraphBlock(standWords(design, name), CONTENT_WIDTH_MM, lettering),
    headingBlock("Ribs and where they stand, mm"),
    ...positionTable(set, lettering),
    ...setUpBlocks(set, name, lettering),
    ...cuttingList(groups, lettering),
    ...(name === "jig" ? holdBlocks(design, lettering) : []),
    ...fenceStandBlocks(set, lettering),
    gapBlock(3),
    ...cautionBlocks(["saw"], lettering),
  ];
  const heights: readonly Block[] = [
    ...(groups.length > 0 ? [paragraphBlock(ribHeightsWords(groups), CONTENT_WIDTH_MM, lettering)] : []),
    ...groups.flatMap((group) => ribBlocks(group, lettering)),
    ...postBlocks(set, lettering),
  ];
  return [
    ...flowBlocks(first, CONTENT).map((marks) => body(title, `1:${plan.scale}`, marks)),
    ...flowBlocks(heights, CONTENT).map((marks) =>
      body(name === "jig" ? "Rib heights" : "Cradle rib heights", "as noted", marks),
    ),
  ];
}

const body = (title: string, scale: string, marks: readonly Mark[]): SheetBody => ({
  title,
  documentType: "jig",
  scale,
  marks,
});

function standWords(design: Design, name: "jig" | "cradle"): string {
  const { jig, sheets, project } = design;
  if (name === "jig") {
    const pasts = [
      ...new Set(design.lie.pasts.map((past) => `${past.partIds.join(", ")}: ${wordPast(past)}`)),
    ];
    const bent = jig.overBend === undefined ? [] : [wordOverBend(jig.overBend)];
    return [
      ...wordAttitude(jig.baseboard.attitude, sheets, project.jig),
      ...wordPlanked(design.parts),
      ...pasts,
      ...bent,
    ].join(" ");
  }
  const paddingMm = project.jig.making?.cradle?.paddingMm ?? 0;
  return `The tray lies here on the skin that was laminated on the jig. The tops are lower than that skin by ${formatMm(paddingMm)} mm: glue padding as thick as that on every top, and lay film over it. Fences hang free in their openings.`;
}
