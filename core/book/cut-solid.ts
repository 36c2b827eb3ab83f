import { at } from "../foundation/index.ts";
import type { Solid } from "../solids/index.ts";
import { paper } from "./marks.ts";
import { triplesOf } from "./mesh-lists.ts";
import type { PaperPoint } from "./types.ts";

/**
 * The outlines along which the plane x = `xMm` cuts a solid: closed loops, y of the car to the right and z up. None where
 * it misses the solid. A plane that meets a vertex is taken to pass just behind it.
 */
export function cutSolid(
  { positions, triangles }: Pick<Solid, "positions" | "triangles">,
  xMm: number,
): readonly (readonly PaperPoint[])[] {
  const isBehind = (vertex: number) => (positions[3 * vertex] ?? 0) >= xMm;
  const crossing = (a: number, b: number): PaperPoint => {
    const [low, high] = a < b ? [a, b] : [b, a];
    const [from, to] = [low, high].map((vertex) => positions.subarray(3 * vertex, 3 * vertex + 3));
    const [x0 = 0, y0 = 0, z0 = 0] = from ?? [];
    const [x1 = 0, y1 = 0, z1 = 0] = to ?? [];
    const t = (xMm - x0) / (x1 - x0);
    return paper(y0 + (y1 - y0) * t, z0 + (z1 - z0) * t);
  };
  const steps: (readonly [PaperPoint, PaperPoint])[] = [];
  for (const corners of triplesOf(triangles)) {
    const ends = corners.flatMap((a, k): { readonly p: PaperPoint; readonly isOut: boolean }[] => {
      const b = at(corners, (k + 1) % 3);
      return isBehind(a) === isBehind(b) ? [] : [{ p: crossing(a, b), isOut: isBehind(a) }];
    });
    const [first, second] = ends;
    if (first === undefined || second === undefined) continue;
    steps.push(first.isOut ? [first.p, second.p] : [second.p, first.p]);
  }
  return chained(steps);
}

/** Steps joined end to start into closed loops; what does not close is left out. */
function chained(steps: readonly (readonly [PaperPoint, PaperPoint])[]): readonly (readonly PaperPoint[])[] {
  const key = ({ x, y }: PaperPoint) => `${Math.round(x * 1e3)}/${Math.round(y * 1e3)}`;
  const long = steps.filter(([a, b]) => key(a) !== key(b));
  const byStart = new Map(long.map(([a, b]) => [key(a), b]));
  const loops: PaperPoint[][] = [];
  for (const [first] of long) {
    const loop: PaperPoint[] = [];
    let here: PaperPoint | undefined = first;
    while (here !== undefined && byStart.has(key(here))) {
      loop.push(here);
      const next: PaperPoint | undefined = byStart.get(key(here));
      byStart.delete(key(here));
      here = next;
    }
    if (loop.length > 2 && here !== undefined && key(here) === key(first)) loops.push(loop);
  }
  return loops;
}
