import { at } from "../foundation/index.ts";
import type { Part } from "../patterns/index.ts";
import type { Island } from "./group-islands.ts";
import { boundsOfLoops, type FlatBounds } from "./loop-measures.ts";

/**
 * Pieces from front to rear and, where several lie side by side, from left to right. Side by side with the
 * foremost piece lies everything whose middle is ahead of that piece's rear end. Those of a left part go from right
 * to left, as the images of the right part's.
 */
export function orderPieces(pieces: readonly Island[], hand: Part["hand"]): Island[] {
  let rest = pieces.map((piece) => {
    const bounds = boundsOfLoops(piece);
    return { piece, bounds: hand === "left" ? imageOf(bounds) : bounds };
  });
  const ordered: Island[] = [];
  while (rest.length > 0) {
    const foremost = at(
      [...rest].sort(
        (a, b) => a.bounds.leastUMm - b.bounds.leastUMm || a.bounds.leastVMm - b.bounds.leastVMm,
      ),
      0,
    );
    const abreast = rest.filter(
      (item) =>
        item === foremost || (item.bounds.leastUMm + item.bounds.mostUMm) / 2 < foremost.bounds.mostUMm,
    );
    abreast.sort((a, b) => a.bounds.leastVMm - b.bounds.leastVMm || a.bounds.leastUMm - b.bounds.leastUMm);
    ordered.push(...abreast.map(({ piece }) => piece));
    rest = rest.filter((item) => !abreast.includes(item));
  }
  return ordered;
}

const imageOf = (bounds: FlatBounds): FlatBounds => ({
  ...bounds,
  leastVMm: -bounds.mostVMm,
  mostVMm: -bounds.leastVMm,
});
