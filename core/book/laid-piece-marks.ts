import type { PackingLoop, PackingPoint } from "../packing/index.ts";
import { boxOf, heightOf, widthOf } from "./boxes.ts";
import { findFreeSpot } from "./free-spot.ts";
import type { Lettering } from "./lettering.ts";
import { loopMark, paper, textMark } from "./marks.ts";
import { thin } from "./thin-points.ts";
import type { Mark, PaperPoint } from "./types.ts";

/** A piece where it lies on its sheet or roll, with its code inside it where there is room. */
export function laidPieceMarks(
  code: string,
  linesMm: readonly PackingLoop[],
  seen: (p: PackingPoint) => PaperPoint,
  lettering: Lettering,
): readonly Mark[] {
  const loops = linesMm.map((loop) => thin(loop.map(seen), 0.05));
  const box = boxOf(loops.flat());
  const label = LABEL_SIZES.flatMap((heightMm) => {
    const size = { widthMm: lettering.widthMm(code, "mono", heightMm) + 1, heightMm: heightMm + 1 };
    const spot = findFreeSpot(size, loops, []);
    return spot === undefined ? [] : [{ heightMm, at: paper(spot.left + 0.5, spot.bottom + 0.5) }];
  })[0];
  const middle = { heightMm: 2.5, at: paper(box.left + widthOf(box) / 2, box.bottom + heightOf(box) / 2) };
  const { heightMm, at } = label ?? middle;
  return [...loops.map((loop) => loopMark(loop, "cut")), textMark(at, code, { heightMm, face: "mono" })];
}

/** What codes are written in, mm, the largest that fits. */
const LABEL_SIZES = [3.5, 2.5] as const;
