import { closingAngleRad, kerfOfClosing, slotKerfMm, TEST_SLOTS, type ZoneSlots } from "../bending/index.ts";
import { formatAngle, formatMm, formatNumber, toDegrees, toRadians } from "../foundation/index.ts";
import { type Block, flowBlocks, gapBlock, headingBlock, paragraphBlock, tableBlocks } from "./blocks.ts";
import { cautionWords } from "./cautions.ts";
import type { Design } from "./design.ts";
import { dimensionMarks } from "./dimensions.ts";
import type { Lettering } from "./lettering.ts";
import { lineMark, paper, textMark } from "./marks.ts";
import { CONTENT, CONTENT_WIDTH_MM, type SheetBody } from "./page-frame.ts";
import type { Mark, PaperPoint } from "./types.ts";

/** The strip for the trial, mm: its ends are the arms that the angle is read between. */
const STRIP = { lengthMm: 150, pitchMm: 25 } as const;

/** Angles beside the expected one that the table tells the kerf for, degrees. */
const TABLED_DEGREES = [-6, -4, -2, 0, 2, 4, 6] as const;

/** A page to try three relief slots on scrap and correct the blade's kerf by; none where no sheet is slotted. */
export function slotTrialSheets(design: Design, lettering: Lettering): readonly SheetBody[] {
  const found = firstSlots(design);
  if (!found) return [];
  const { slots, thicknessMm } = found;
  const { bending } = design.project;
  const kerfMm = slotKerfMm(bending);
  const { depthMm } = slots;
  const expectedRad = TEST_SLOTS * closingAngleRad({ kerfMm, depthMm });
  const text = (words: string) => paragraphBlock(words, CONTENT_WIDTH_MM, lettering);
  const blocks: readonly Block[] = [
    paragraphBlock("Trial of three relief slots", CONTENT_WIDTH_MM, lettering, { heightMm: 5, face: "bold" }),
    text(
      `Cut a strip of the same ${formatMm(thicknessMm)} mm foam, ${formatNumber(STRIP.lengthMm, 0)} mm long and about 60 wide. Saw ${TEST_SLOTS} slots across it, ${formatMm(depthMm)} mm deep and ${formatNumber(STRIP.pitchMm, 0)} mm apart, with the blade and the guide that will cut the sheet.`,
    ),
    text(
      "Bend it toward the slots until all three are just shut, without force. Lay it on its edge on paper, draw along both ends, and measure the angle by which one end has turned from the other.",
    ),
    text(
      `With a kerf of ${formatMm(kerfMm)} mm they close by ${formatAngle(expectedRad)}. Type the angle that you measured, and the depth, under Sheets, How bends are made and held: it takes the place of the blade's width. If the web cracks, leave more of it or bend to a larger radius.`,
    ),
    text(cautionWords("saw")),
    text(cautionWords("foam dust")),
    gapBlock(4),
    stripBlock(thicknessMm, depthMm, kerfMm),
    headingBlock("What was measured, and the kerf that it means"),
    ...tableBlocks(
      [
        { title: "Closed by", widthMm: 40, face: "mono", anchor: "end" },
        { title: "Kerf, mm", widthMm: 40, face: "mono", anchor: "end" },
      ],
      TABLED_DEGREES.map((by) => toDegrees(expectedRad) + by)
        .filter((degrees) => degrees > 0)
        .map((degrees) => [
          formatAngle(toRadians(degrees)),
          formatNumber(kerfOfClosing(depthMm, toRadians(degrees) / TEST_SLOTS), 2),
        ]),
      lettering,
    ),
    gapBlock(4),
    text("Measured: ____________ °, slots ____________ mm deep."),
  ];
  return flowBlocks(blocks, CONTENT).map((marks) => ({
    title: "Trial of relief slots",
    documentType: "trial",
    scale: "1:1",
    marks,
  }));
}

export function firstSlots({
  parts,
}: Design): { readonly slots: ZoneSlots; readonly thicknessMm: number } | undefined {
  for (const { zones, thicknessMm } of parts) {
    const slots = zones.find(({ bend }) => bend?.slots)?.bend?.slots;
    if (slots) return { slots, thicknessMm };
  }
  return undefined;
}

/** The trial strip seen from its edge, true to size. */
function stripBlock(thicknessMm: number, depthMm: number, kerfMm: number): Block {
  const heightMm = thicknessMm + 26;
  const draw = (corner: PaperPoint): readonly Mark[] => {
    const left = corner.x + (CONTENT_WIDTH_MM - STRIP.lengthMm) / 2;
    const top = corner.y - 6;
    const first = left + STRIP.lengthMm / 2 - ((TEST_SLOTS - 1) / 2) * STRIP.pitchMm;
    const slots = Array.from({ length: TEST_SLOTS }, (_, i) => first + i * STRIP.pitchMm);
    const rim = slots.flatMap((x) => [
      paper(x - kerfMm / 2, top),
      paper(x - kerfMm / 2, top - depthMm),
      paper(x + kerfMm / 2, top - depthMm),
      paper(x + kerfMm / 2, top),
    ]);
    const right = left + STRIP.lengthMm;
    const outline = [
      paper(left, top - thicknessMm),
      paper(left, top),
      ...rim,
      paper(right, top),
      paper(right, top - thicknessMm),
      paper(left, top - thicknessMm),
    ];
    const [a, b] = [paper(slots[0] ?? first, top), paper(slots[1] ?? first, top)];
    const foot = top - thicknessMm;
    return [
      lineMark(outline, "outline"),
      ...dimensionMarks(paper(a.x, foot), paper(b.x, foot), -7, STRIP.pitchMm),
      ...dimensionMarks(paper(left, foot), paper(right, foot), -14, STRIP.lengthMm),
      textMark(
        paper(left + 2, top + 2),
        `slots ${formatMm(depthMm)} deep, web ${formatMm(thicknessMm - depthMm)}`,
      ),
    ];
  };
  return { heightMm, draw };
}
