import { formatMass, formatNumber, levelOf, wordProblem } from "../foundation/index.ts";
import { type Block, flowBlocks, gapBlock, headingBlock, paragraphBlock, tableBlocks } from "./blocks.ts";
import { cautionWords } from "./cautions.ts";
import { counted } from "./counted.ts";
import type { Design } from "./design.ts";
import type { Lettering } from "./lettering.ts";
import { CONTENT, CONTENT_WIDTH_MM, type SheetBody } from "./page-frame.ts";

/** The cover: what the book is about, its sheets with their numbers, and the open problems in words. */
export function coverSheets(
  design: Design,
  sheets: readonly SheetBody[],
  lettering: Lettering,
): readonly SheetBody[] {
  const first = bodies(design, sheets, { coverCount: 1, lettering });
  return first.length === 1 ? first : bodies(design, sheets, { coverCount: first.length, lettering });
}

function bodies(
  design: Design,
  sheets: readonly SheetBody[],
  context: { readonly coverCount: number; readonly lettering: Lettering },
): readonly SheetBody[] {
  const { project, totals } = design;
  const { coverCount, lettering } = context;
  const text = (words: string) => paragraphBlock(words, CONTENT_WIDTH_MM, lettering);
  const blocks: readonly Block[] = [
    gapBlock(8),
    paragraphBlock(project.title, CONTENT_WIDTH_MM, lettering, { heightMm: 10, face: "bold" }),
    paragraphBlock("Build book", CONTENT_WIDTH_MM, lettering, { heightMm: 5 }),
    gapBlock(4),
    text(
      `${counted(totals.partCount, "part")} in ${counted(totals.stripCount, "strip")}, ${formatNumber(totals.foamAreaMm2 / 1e6, 2)} m² of foam, ${formatMass(totals.foamMassKg)} bare; ${counted(design.jig.ribs.length, "rib")}; about ${counted(Math.ceil(totals.handsOnHours), "hour")} of work to the bare shell${inAll(design)}.`,
    ),
    text("All lengths in mm. Templates at full size come as a file of their own."),
    text(cautionWords("judgement")),
    ...problemBlocks(design, lettering),
    headingBlock("Sheets"),
    ...contentsTable(sheets, coverCount, lettering),
  ];
  return flowBlocks(blocks, CONTENT).map((marks) => ({
    title: "Cover and contents",
    documentType: "build book",
    scale: "none",
    marks,
  }));
}

/** The hours of the calendar, where there is one. */
const inAll = ({ schedule: { tasks, workMinutes } }: Design): string =>
  tasks.length > 0
    ? `, ${counted(Math.round(workMinutes / 60), "hour")} in all by the calendar, skins and trimming with it`
    : "";

function problemBlocks(design: Design, lettering: Lettering): readonly Block[] {
  if (design.problems.length === 0) {
    return [
      headingBlock("Open problems"),
      paragraphBlock("None when this book was made.", CONTENT_WIDTH_MM, lettering),
    ];
  }
  const columns = [
    { title: "Level", widthMm: 24 },
    { title: "What and what to do", widthMm: 150 },
  ];
  const rows = [...design.problems]
    .sort((a, b) => levelOf(b).localeCompare(levelOf(a), "en"))
    .map((problem) => [levelOf(problem) === "stop" ? "not made" : "look at", wordProblem(problem)]);
  return [headingBlock("Open problems"), ...tableBlocks(columns, rows, lettering)];
}

/** One line for each run of sheets with one title. */
function contentsTable(
  sheets: readonly SheetBody[],
  coverCount: number,
  lettering: Lettering,
): readonly Block[] {
  const rows: string[][] = [];
  sheets.forEach((sheet, i) => {
    if (i > 0 && sheets[i - 1]?.title === sheet.title) return;
    rows.push([formatNumber(coverCount + i + 1, 0), sheet.title, sheet.documentType, sheet.scale]);
  });
  const columns = [
    { title: "Sheet", widthMm: 20, face: "mono" as const, anchor: "end" as const },
    { title: "Title", widthMm: 84 },
    { title: "Document type", widthMm: 40 },
    { title: "Scale", widthMm: 30, face: "mono" as const, anchor: "end" as const },
  ];
  return tableBlocks(columns, rows, lettering);
}
