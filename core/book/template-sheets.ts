import { formatNumber } from "../foundation/index.ts";
import { flowBlocks, gapBlock, headingBlock, paragraphBlock, tableBlocks } from "./blocks.ts";
import type { Design } from "./design.ts";
import type { Lettering } from "./lettering.ts";
import { CONTENT, CONTENT_WIDTH_MM, type SheetBody } from "./page-frame.ts";
import type { PaperWork } from "./paper-work.ts";
import { type TemplateCount, templateCounts, WAY_WORDS } from "./template-ways.ts";

const END = { face: "mono", anchor: "end" } as const;

/** How every part is marked out: the way, its pages and their taping time, and what the other ways would take. */
export function templateSheets(
  design: Design,
  { pieces, templates }: PaperWork,
  lettering: Lettering,
): readonly SheetBody[] {
  const counts = templateCounts(design, pieces);
  if (counts.length === 0) return [];
  const pageCount = templates.plan?.pageCount ?? 0;
  const text = (words: string) => paragraphBlock(words, CONTENT_WIDTH_MM, lettering);
  const blocks = [
    headingBlock("How the parts are marked out"),
    text(
      `The templates are ${formatNumber(pageCount, 0)} pages, map and gauges among them. Whole: every line from paper. Curves and corners: pages with straight runs alone are left out; a straight run is drawn with a straightedge between the corners, or from the marking-out table. Table only: no page; all from the table of the strip, the plate or the rib.`,
    ),
    text(
      "A page whose neighbours are left out carries two crosses with figures. Mark these two places on the foam, along the datum and square to it (on a rib along its base and up), and lay the crosses on them. Then check a corner against the table.",
    ),
    text(
      "Where pages lie beside each other a long bar runs over them. Measure it whole when they are taped: the errors of all seams add up on it. Off by more than 1 mm (common practice), lay the pages anew before anything is marked.",
    ),
    gapBlock(2),
    ...tableBlocks(COLUMNS, counts.map(rowOf), lettering),
    gapBlock(2),
    text(
      "Pages of a part by itself: on shared paper all of them together are fewer. Minutes: printing, trimming, taping and checking, 10 a square metre of pages, 3 from a roll (common practice).",
    ),
  ];
  return flowBlocks(blocks, CONTENT).map((marks) => ({
    title: "Templates",
    documentType: "templates",
    scale: "none",
    marks,
  }));
}

const COLUMNS = [
  { title: "Part", widthMm: 16, face: "mono" as const },
  { title: "Name", widthMm: 50 },
  { title: "Marked out by", widthMm: 36 },
  { title: "Whole", widthMm: 18, ...END },
  { title: "min", widthMm: 14, ...END },
  { title: "Curves", widthMm: 22, ...END },
  { title: "min", widthMm: 14, ...END },
];

const rowOf = (count: TemplateCount): readonly string[] => [
  count.partId,
  count.name,
  WAY_WORDS[count.way],
  formatNumber(count.fullPages, 0),
  formatNumber(count.fullMinutes, 0),
  formatNumber(count.curvesPages, 0),
  formatNumber(count.curvesMinutes, 0),
];
