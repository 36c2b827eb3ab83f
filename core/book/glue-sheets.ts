import { formatMass, formatMm, formatNumber, wordProblem } from "../foundation/index.ts";
import { type GlueStep, glueHow, lineWords, openTimeWords, waitWords } from "../glue-up/index.ts";
import { gluingOf } from "../project/index.ts";
import {
  type Block,
  besideBlock,
  flowBlocks,
  gapBlock,
  headingBlock,
  paragraphBlock,
  stackBlock,
} from "./blocks.ts";
import { heightOf, widthOf } from "./boxes.ts";
import { cautionBlocks, type Hazard } from "./cautions.ts";
import type { Design } from "./design.ts";
import type { Lettering } from "./lettering.ts";
import { boxMark, lineMark, paper } from "./marks.ts";
import { CONTENT, CONTENT_WIDTH_MM, type SheetBody } from "./page-frame.ts";
import { codeMarks, linesOfPlan, planBox, planMarks, type View } from "./plan-picture.ts";
import { type SpaceShape, stripShapes, turnedOver } from "./plan-shapes.ts";
import type { Mark, PaperPoint } from "./types.ts";

const PICTURE_WIDTH_MM = 78;
const PICTURE_HEIGHT_MM = 50;

/** The glue-up step by step: a plan of what stands (thin) and what comes (thick), and what to do and why. */
export function glueSheets(design: Design, lettering: Lettering): readonly SheetBody[] {
  const blocks = design.glueUp.length > 0 ? planBlocks(design, lettering) : coldBlocks(design, lettering);
  if (blocks.length === 0) return [];
  return flowBlocks(blocks, CONTENT).map((marks) => ({
    title: "Glue-up",
    documentType: "glue-up",
    scale: "none",
    marks,
  }));
}

/** In place of the plan where it is too cold for one. */
const coldBlocks = ({ problems }: Design, lettering: Lettering): readonly Block[] =>
  problems
    .filter(({ kind }) => kind === "glue-too-cold")
    .flatMap((problem) => [
      headingBlock("Too cold"),
      paragraphBlock(wordProblem(problem), CONTENT_WIDTH_MM, lettering),
    ]);

function planBlocks(design: Design, lettering: Lettering): readonly Block[] {
  const shapes = stripShapes(design);
  const { attitude } = design.jig.baseboard;
  const gluing = gluingOf(design.project);
  const hazards: readonly Hazard[] = [gluing.glue?.hazard ?? "epoxy", "foam dust"];
  const text = (words: string) => paragraphBlock(words, CONTENT_WIDTH_MM, lettering);
  return [
    ...cautionBlocks(hazards, lettering),
    gapBlock(2),
    ...glueHow(gluing).map(text),
    text(
      `Pictures are seen from above with the front to the left${attitude === "inverted" ? "; on the jig the tray lies upside down, so its right hand is below" : ""}. Thin lines stand already, thick ones come in this step.`,
    ),
    ...design.glueUp.map((step) => stepBlock(step, seenIn(step, shapes, attitude), lettering)),
  ];
}

/** What is seen from above: on an inverted jig the tray lies upside down, its right hand toward the reader. */
const seenIn = (
  step: GlueStep,
  shapes: readonly SpaceShape[],
  attitude: "upright" | "inverted",
): readonly SpaceShape[] =>
  step.place === "jig" && attitude === "inverted" ? shapes.map(turnedOver) : shapes;

function stepBlock(step: GlueStep, shapes: readonly SpaceShape[], lettering: Lettering): Block {
  const width = CONTENT_WIDTH_MM - PICTURE_WIDTH_MM - 6;
  const text = (words: string) => paragraphBlock(words, width, lettering);
  const facts = [
    ...step.how,
    step.adds.length === 0 ? "" : `Comes: ${step.adds.join(", ")}.`,
    ...step.lines.map((line) => `Glue ${lineWords(line, step.heldBy)}.`),
    step.glueLengthMm > 0
      ? `${formatMm(step.glueLengthMm)} mm of joint, ${formatMass(step.glueMassKg)} of glue, ${step.pins} ${step.heldBy}.`
      : "Nothing is glued in this step.",
    `About ${formatNumber(step.workMinutes, 0)} min of work${step.rounds.length > 0 ? `; ${openTimeWords(step)}` : ""}.`,
    step.waitHours > 0
      ? `${step.heldBy === "pins" ? "Pins" : "Weights"} stay ${formatNumber(step.clampHours, 1)} h; load it after ${formatNumber(step.waitHours, 1)} h.`
      : "",
    waitWords(step),
    ...step.cautions,
  ].filter((words) => words !== "");
  const words = stackBlock([
    headingBlock(`${step.step}  ${step.title}`),
    text(`On the ${step.place}. ${step.why}`),
    ...facts.map(text),
  ]);
  return stackBlock([besideBlock(stepPicture(step, shapes, lettering), words, PICTURE_WIDTH_MM + 6), rule()]);
}

const rule = (): Block => ({
  heightMm: 3,
  draw: (corner) => [
    lineMark(
      [paper(corner.x, corner.y - 1.5), paper(corner.x + CONTENT_WIDTH_MM, corner.y - 1.5)],
      "station",
    ),
  ],
});

function stepPicture(step: GlueStep, shapes: readonly SpaceShape[], lettering: Lettering): Block {
  const box = planBox(shapes);
  const [width, height] = [PICTURE_WIDTH_MM - 6, PICTURE_HEIGHT_MM - 6];
  const scale = Math.max(widthOf(box) / width, heightOf(box) / height, 1e-6);
  const isOf = (ids: readonly string[]) => (shape: SpaceShape) =>
    ids.includes(shape.id) || ids.includes(shape.partId);
  const coming = shapes.filter(isOf(step.adds));
  const standing = shapes.filter((shape) => isOf(step.standing)(shape) && !coming.includes(shape));
  const draw = (corner: PaperPoint): readonly Mark[] => {
    const view: View = {
      box,
      scale,
      corner: paper(
        corner.x + (PICTURE_WIDTH_MM - widthOf(box) / scale) / 2,
        corner.y - 2 - PICTURE_HEIGHT_MM / 2 - heightOf(box) / scale / 2,
      ),
    };
    const frame = boxMark(
      paper(corner.x, corner.y - 2 - PICTURE_HEIGHT_MM),
      PICTURE_WIDTH_MM,
      PICTURE_HEIGHT_MM,
      "station",
    );
    const lines = [frame, ...linesOfPlan([...coming, ...standing], view)];
    return [
      frame,
      ...standing.flatMap((shape) => planMarks(shape, view, "station")),
      ...coming.flatMap((shape) => planMarks(shape, view, "outline")),
      ...codeMarks(namedShapes(coming), view, lettering, lines),
    ];
  };
  return { heightMm: PICTURE_HEIGHT_MM + 3, draw };
}

/** Of many strips of one sheet beside each other the first and the last are named. */
function namedShapes(coming: readonly SpaceShape[]): readonly SpaceShape[] {
  const isOneSheet = coming.every(({ partId }) => partId === coming[0]?.partId);
  return isOneSheet && coming.length > 3 ? [...coming.slice(0, 1), ...coming.slice(-1)] : coming;
}
