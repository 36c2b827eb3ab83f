import { MINUS } from "../foundation/index.ts";
import { hasBevels } from "../marking/index.ts";
import { type Block, headingBlock, paragraphBlock } from "./blocks.ts";
import type { Design } from "./design.ts";
import type { Lettering } from "./lettering.ts";
import { CONTENT_WIDTH_MM } from "./page-frame.ts";

/** How the sheets of the strips are read, said once for all of them. */
export function readingBlocks({ strips, parts }: Design, lettering: Lettering): readonly Block[] {
  const isBevelled = strips.some(hasBevels);
  const hasFences = parts.some(({ kind }) => kind === "fence");
  const words = [
    "Edges. Drawn: the length on the drawn face. In space and flat: at the neutral fibre, bent and laid flat; the two agree. Bevel: off square, at the edge's start and end.",
    ...(isBevelled ? [LINE_WORDS] : []),
    "Marks along the edges. Marks of one number on both strips of a joint meet when it is glued. The bevel and the longer face are told where they change.",
    "Marking out. Draw one straight datum along the strip, from where the table says. Measure along it, then square from it; positive to the right hand looking forward. Misses: how far an edge is missed at most when its marks are joined straight, and by a batten.",
    ...(parts.some(({ kind }) => kind === "transition") ? [RULING_WORDS] : []),
    ...(isBevelled ? [letterWords(hasFences)] : []),
  ];
  return [
    headingBlock("How the sheets of the strips are read"),
    ...words.map((line) => paragraphBlock(line, CONTENT_WIDTH_MM, lettering)),
  ];
}

const LINE_WORDS = `Line. Lengths are those of mid-thickness. Line tells how far the line to cut by, on the face shown, lies outside (+) or inside (${MINUS}) of the outline at mid-thickness: half the thickness times the tangent of the bevel, half of a scarf, the spare of a closer, and foam that runs past. Draw that line alone, and tilt the blade by the bevel.`;

const RULING_WORDS =
  "Transitions. Chain lines are rulings, from the first edge to the second: the strip bends around them and stays straight along them.";

const letterWords = (hasFences: boolean): string =>
  `Bevels of the marks. Over or beside a mark stands the bevel of its edge off square: A where the air face is the longer one, U where the upper face is${hasFences ? "; on fences O where the outboard face is, I where the inboard face is" : ""}.`;
