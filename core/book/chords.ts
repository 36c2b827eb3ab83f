import { at } from "../foundation/index.ts";
import { paper } from "./marks.ts";
import type { PaperPoint } from "./types.ts";

type Loop = readonly PaperPoint[];

/**
 * The stretches of the upright line x = `x` that lie inside the loops (even-odd), from below upward. A line
 * that runs along an edge is read as lying just right of it.
 */
export function chordsAt(loops: readonly Loop[], x: number): readonly (readonly [number, number])[] {
  const crossings: number[] = [];
  for (const loop of loops) {
    for (let i = 0; i < loop.length; i++) {
      const [a, b] = [at(loop, i), at(loop, (i + 1) % loop.length)];
      if (a.x <= x === b.x <= x) continue;
      crossings.push(a.y + ((b.y - a.y) * (x - a.x)) / (b.x - a.x));
    }
  }
  crossings.sort((p, q) => p - q);
  const chords: (readonly [number, number])[] = [];
  for (let i = 0; i + 1 < crossings.length; i += 2) chords.push([at(crossings, i), at(crossings, i + 1)]);
  return chords;
}

/** The stretches of the level line y = `y` inside the loops, from left to right. */
export const levelChordsAt = (loops: readonly Loop[], y: number): readonly (readonly [number, number])[] =>
  chordsAt(
    loops.map((loop) => loop.map((p) => paper(p.y, p.x))),
    y,
  );

/** Whether a point lies inside the loops (even-odd): an odd number of edges passes below it. */
export function isInsideLoops(point: PaperPoint, loops: readonly Loop[]): boolean {
  let isInside = false;
  for (const loop of loops) {
    let a = at(loop, -1);
    for (const b of loop) {
      const passes = a.x <= point.x !== b.x <= point.x;
      if (passes && a.y + ((b.y - a.y) * (point.x - a.x)) / (b.x - a.x) <= point.y) isInside = !isInside;
      a = b;
    }
  }
  return isInside;
}
