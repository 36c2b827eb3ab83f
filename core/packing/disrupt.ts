import { at } from "../foundation/index.ts";
import { copyLie, type Lie } from "./field.ts";
import { clampInto } from "./move-piece.ts";
import { nextRandom } from "./random.ts";
import { lockedOf, piecesOf, type Search, withAttempt } from "./search-state.ts";

const MOST_POOLED = 20;

/** A given-up lie of the pool, mostly one of the best, with two of its larger pieces swapped. */
export function disrupted(search: Search): Search {
  const { attempt, random } = search;
  const { shapes } = piecesOf(search);
  const pool = [...search.pool, { loss: attempt.least, lie: attempt.leastLie }]
    .toSorted((a, b) => a.loss - b.loss)
    .slice(0, MOST_POOLED);
  const lie = copyLie(at(pool, Math.floor(nextRandom(random) ** 2 * pool.length)).lie);
  const pick = (list: readonly number[]) => list[Math.floor(nextRandom(random) * list.length)];
  const large = shapes
    .map((_, index) => index)
    .filter((index) => lockedOf(search, index) === undefined)
    .sort((a, b) => at(shapes, b).area - at(shapes, a).area)
    .slice(0, Math.max(2, Math.ceil(shapes.length / 2)));
  const first = pick(large);
  const second = pick(large.filter((index) => first !== undefined && shapes[index] !== shapes[first]));
  if (first !== undefined && second !== undefined) swapPlaces(search, lie, first, second);
  return withAttempt({ ...search, pool }, search.bins, lie);
}

/** Each of two pieces comes to where the other's middle was, if it fits there. */
function swapPlaces(search: Search, lie: Lie, first: number, second: number): void {
  const { shapes } = piecesOf(search);
  const turnedAt = (index: number) => at(at(shapes, index).variants, lie.variants[index] ?? 0);
  const middleOf = (index: number) => ({
    bin: lie.bins[index] ?? 0,
    x: (lie.xs[index] ?? 0) + turnedAt(index).width / 2,
    y: (lie.ys[index] ?? 0) + turnedAt(index).height / 2,
  });
  const [a, b] = [middleOf(first), middleOf(second)];
  for (const [index, to] of [
    [first, b],
    [second, a],
  ] as const) {
    const turned = turnedAt(index);
    const variant = lie.variants[index] ?? 0;
    const spot = { bin: to.bin, variant, x: to.x - turned.width / 2, y: to.y - turned.height / 2 };
    if (clampInto(search.bins, spot, turned) === undefined) continue;
    lie.bins[index] = spot.bin;
    lie.xs[index] = spot.x;
    lie.ys[index] = spot.y;
  }
}
