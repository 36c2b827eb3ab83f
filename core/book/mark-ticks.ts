import type { EdgeMark } from "../marking/index.ts";
import { type Box, boxesOverlap, growBox, markBox } from "./boxes.ts";
import { clipLine } from "./clip.ts";
import type { Lettering } from "./lettering.ts";
import { type LineMark, lineMark, paper, textMark, toPaper } from "./marks.ts";
import type { Mark, PaperPoint } from "./types.ts";

/** Half a tick across an edge, and how far numbers may stand in from the edge (out where less than 0), best first, mm. */
const TICK_MM = 1.5;
const NUMBERS_MM = [3, 4.2, -3.4, -5.5, 6, 8] as const;

/**
 * Ticks of the marks on the edges of a strip and the numbers of those on joints: inside the strip, else outside, clear of its
 * outline, of what is taken and of each other; one that finds no room is left to the table of marks.
 */
export function markTicks(
  marks: readonly EdgeMark[],
  put: (p: PaperPoint) => PaperPoint,
  around: {
    readonly lettering: Lettering;
    readonly lines: readonly LineMark[];
    readonly taken: readonly Box[];
  },
): readonly Mark[] {
  const taken = [...around.taken];
  return marks.flatMap(({ at: place, inward, joint }): Mark[] => {
    const p = put(toPaper(place));
    const inside = (byMm: number) => paper(p.x + inward.u * byMm, p.y + inward.v * byMm);
    const tick = lineMark([inside(-TICK_MM), inside(TICK_MM)], "thin", "marks");
    if (joint === undefined) return [tick];
    const found = NUMBERS_MM.map((byMm) => {
      const { x, y } = inside(byMm);
      const mark = textMark(paper(x, y - 0.9), joint.label, { heightMm: 2.5, anchor: "middle" });
      return { mark, box: markBox(mark, around.lettering) };
    }).find(
      ({ box }) =>
        !taken.some((other) => boxesOverlap(other, growBox(box, 0.2))) &&
        around.lines.every((line) => clipLine(line, box).length === 0),
    );
    if (found === undefined) return [tick];
    taken.push(found.box);
    return [tick, found.mark];
  });
}
