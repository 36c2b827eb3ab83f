import { at } from "../foundation/index.ts";
import type { Island } from "./group-islands.ts";
import { boundsOfLoops } from "./loop-measures.ts";

/**
 * Pieces from front to rear and, where several lie side by side, from left to right. Side by side with the
 * foremost piece lies everything whose middle is ahead of that piece's rear end.
 */
export function orderPieces(pieces: readonly Island[]): Island[] {
  let rest = pieces.map((piece) => ({ piece, bounds: boundsOfLoops(piece) }));
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
