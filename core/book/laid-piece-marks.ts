import type { PackingLoop, PackingPoint } from "../packing/index.ts";
import { findFreeSpot } from "./free-spot.ts";
import { type Label, type LabelsAround, type Loops, labelBeside } from "./label-beside.ts";
import type { Lettering } from "./lettering.ts";
import { loopMark, paper, textMark } from "./marks.ts";
import { thin } from "./thin-points.ts";
import type { Mark, PaperPoint } from "./types.ts";

/** A piece on its sheet or roll by its code. */
export interface CodedPiece {
  readonly code: string;
  readonly linesMm: readonly PackingLoop[];
}

/** Pieces where they lie on their sheet or roll as paper shows them, and the labels of their codes. */
export interface LaidPieceMarks {
  readonly marks: readonly Mark[];
  readonly labels: readonly Label[];
  /** Codes that stand there as a number only, in the order of their numbers from 1. */
  readonly numbered: readonly string[];
}

/**
 * Every piece with its code inside it, level or read from the right; where it has no room, beside it with a line to it,
 * clear of all pieces, of the lines given and of the other codes. Where pieces lie close, such codes may be told by
 * numbers, which stay near them; the caller lists what they are.
 */
export function laidPieceMarks(
  pieces: readonly CodedPiece[],
  seen: (p: PackingPoint) => PaperPoint,
  { lines, labels: others, ...rest }: LabelsAround,
  withoutRoom: "code beside" | "number" = "code beside",
): LaidPieceMarks {
  const drawn = pieces.map(({ code, linesMm }) => ({
    code,
    loops: linesMm.map((loop) => thin(loop.map(seen), 0.05)),
  }));
  const outlines = drawn.flatMap(({ loops }) => loops.map((loop) => loopMark(loop, "cut")));
  const around = { ...rest, lines: [...lines, ...outlines] };
  const inside = drawn.map(({ code, loops }) => labelInside(code, loops, rest.lettering));
  const labels = inside.flatMap((label) => label ?? []);
  const numbered: string[] = [];
  drawn.forEach(({ code, loops }, i) => {
    if (inside[i] !== undefined) return;
    if (withoutRoom === "number") numbered.push(code);
    const words = withoutRoom === "number" ? `${numbered.length}` : code;
    const beside = () => labelBeside(words, loops, { ...around, labels: [...others, ...labels] });
    labels.push(
      (withoutRoom === "number" ? labelInside(words, loops, rest.lettering) : undefined) ?? beside(),
    );
  });
  return { marks: [...outlines, ...labels.flatMap(({ marks }) => marks)], labels, numbered };
}

/** What codes are written in, mm, the largest that fits. */
const LABEL_SIZES = [3.5, 2.5] as const;

function labelInside(code: string, loops: Loops, lettering: Lettering): Label | undefined {
  for (const heightMm of LABEL_SIZES) {
    const [along, up] = [lettering.widthMm(code, "mono", heightMm) + 1, heightMm + 1];
    for (const isTurned of [false, true]) {
      const size = isTurned ? { widthMm: up, heightMm: along } : { widthMm: along, heightMm: up };
      const spot = findFreeSpot(size, loops, []);
      if (spot === undefined) continue;
      const at = isTurned
        ? paper(spot.right - 0.5, spot.bottom + 0.5)
        : paper(spot.left + 0.5, spot.bottom + 0.5);
      const look = { heightMm, face: "mono", ...(isTurned && { turnRad: Math.PI / 2 }) } as const;
      return { box: spot, marks: [textMark(at, code, look)] };
    }
  }
  return undefined;
}
