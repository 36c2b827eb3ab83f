import { at } from "../foundation/index.ts";
import { type Bin, type Field, type Lie, openField, type Spot } from "./field.ts";
import { goAnywhere } from "./move-piece.ts";
import type { Prepared } from "./prepare.ts";
import type { RandomState } from "./random.ts";
import { type Attempt, openAttempt } from "./separate.ts";
import type { Shape } from "./shapes.ts";

/** A lie without collisions, and the bins it needs. The last bin ends where its last piece ends. */
export interface Incumbent {
  /** Indexes of the prepared pieces that lie in it. */
  readonly pieces: readonly number[];
  readonly bins: readonly Bin[];
  readonly lie: Lie;
}

/**
 * A search as it stands after some sweeps: plain data, so that it can be kept, sent and taken up again. The same
 * problem, seed and steps give the same layout on every machine.
 */
export interface Search {
  readonly prepared: Prepared;
  /** Indexes of the prepared pieces that are being laid; all, unless the stock does not suffice. */
  readonly pieces: readonly number[];
  readonly random: RandomState;
  readonly phase: "opening" | "exploring" | "compressing" | "done";
  readonly bins: readonly Bin[];
  readonly lie: Lie;
  readonly weights: Float64Array;
  readonly attempt: Attempt;
  readonly incumbent: Incumbent | undefined;
  /** How much the last bin is shortened next, as a share. */
  readonly shrink: number;
  /** Lies that were given up at the present length, the least loss first. */
  readonly pool: readonly { readonly loss: number; readonly lie: Lie }[];
  readonly sweeps: number;
}

/** The search with a new attempt in these bins; all weights begin at 1. */
export function withAttempt(
  search: Omit<Search, "bins" | "lie" | "weights" | "attempt">,
  bins: readonly Bin[],
  lie: Lie,
): Search {
  const weights = new Float64Array(search.pieces.length ** 2).fill(1);
  const attempt = openAttempt(openField(piecesOf(search), bins, lie, weights));
  return { ...search, bins, lie, weights, attempt };
}

export const fieldOf = (search: Search): Field =>
  openField(piecesOf(search), search.bins, search.lie, search.weights);

/** The shapes that are being laid, and which of them are locked. */
export const piecesOf = ({ prepared, pieces }: Pick<Search, "prepared" | "pieces">) => ({
  shapes: pieces.map((piece) => at(prepared.shapes, piece)),
  isLocked: pieces.map((piece) => prepared.locked[piece] !== undefined),
});

export const isRoll = ({ prepared }: Pick<Search, "prepared">): boolean =>
  prepared.problem.stock.kind === "roll";

export const lockedOf = (
  { prepared, pieces }: Pick<Search, "prepared" | "pieces">,
  index: number,
): Spot | undefined => prepared.locked[at(pieces, index)];

/** How often a random place is tried for a piece that does not fit every bin at every angle. */
const MOST_TRIES = 1000;

/** Puts a piece of the lie anywhere in the bins, collisions or not; it stays where it is if no place was found. */
export function scatter(
  shape: Shape,
  bins: readonly Bin[],
  lie: Lie,
  index: number,
  random: RandomState,
): void {
  const spot: Spot = { bin: 0, variant: 0, x: 0, y: 0 };
  for (let k = 0; k < MOST_TRIES; k++) {
    if (!goAnywhere(spot, bins, shape.variants, random)) continue;
    writeSpot(lie, index, spot);
    return;
  }
}

export function writeSpot(lie: Lie, index: number, spot: Spot): void {
  lie.bins[index] = spot.bin;
  lie.variants[index] = spot.variant;
  lie.xs[index] = spot.x;
  lie.ys[index] = spot.y;
}

/** The narrowest that a shape can lie in a bin of a width. */
export const leastExtent = ({ variants }: Shape, width: number): number =>
  Math.min(...variants.flatMap((variant) => (variant.height <= width ? [variant.width] : [])));

/** The bins with the last one ending where its last piece ends; without it where it is empty. */
export function tightened(
  search: Pick<Search, "prepared" | "pieces">,
  bins: readonly Bin[],
  lie: Lie,
): readonly Bin[] {
  const last = bins.length - 1;
  const ends = piecesOf(search).shapes.flatMap(({ variants }, index) =>
    lie.bins[index] === last ? [(lie.xs[index] ?? 0) + at(variants, lie.variants[index] ?? 0).width] : [],
  );
  const rest = bins.slice(0, -1);
  return ends.length === 0 ? rest : [...rest, { ...at(bins, last), length: Math.max(...ends) }];
}
