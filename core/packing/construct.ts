import { at } from "../foundation/index.ts";
import { type Bin, type Field, type Lie, lossAt, newLie, openField, putPiece, type Spot } from "./field.ts";
import { writeSpot } from "./search-state.ts";
import type { Shape, Variant } from "./shapes.ts";

/** The bin of a piece that is in none yet. */
const NOWHERE = -1;
/** At how many of its angles a piece is tried: those with the smallest boxes. */
const MOST_ANGLES = 8;
/** A slide ends at steps of this, units. */
const LEAST_SLIDE = 200;

/** A lie without collisions, and the pieces that no bin takes; they are in none of its bins. */
export interface ConstructedLie {
  readonly lie: Lie;
  readonly left: readonly number[];
}

/**
 * Lays pieces one after the other, the larger first, each in the first bin that takes it, as near to the bin's
 * beginning as it can be without moving others (first fit, bottom left). Locked pieces lie before all others.
 */
export function layInTurn(
  pieces: Pick<Field, "shapes" | "isLocked">,
  bins: readonly Bin[],
  locked: readonly (Spot | undefined)[],
): ConstructedLie {
  const { shapes } = pieces;
  const lie = newLie(shapes.length);
  lie.bins.fill(NOWHERE);
  for (const [index, spot] of locked.entries()) if (spot !== undefined) writeSpot(lie, index, spot);
  const field = openField(pieces, bins, lie, new Float64Array(shapes.length ** 2).fill(1));
  const free = shapes.map((_, index) => index).filter((index) => locked[index] === undefined);
  free.sort((a, b) => at(shapes, b).area - at(shapes, a).area);
  const left = free.filter((piece) => !layFirst(field, piece));
  return { lie, left };
}

function layFirst(field: Field, piece: number): boolean {
  for (let bin = 0; bin < field.bins.length; bin++) {
    const spot = firstPlace(field, piece, bin);
    if (spot === undefined) continue;
    putPiece(field, piece, spot);
    return true;
  }
  return false;
}

/** The free place whose far end is nearest to the bin's beginning. */
function firstPlace(field: Field, piece: number, bin: number): Spot | undefined {
  const { length, width } = at(field.bins, bin);
  const { xs, ys } = cornersIn(field, bin);
  let best: Spot | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const variant of flattest(at(field.shapes, piece))) {
    const turned = at(at(field.shapes, piece).variants, variant);
    const highestY = width - turned.height;
    const lastX = length - turned.width;
    if (highestY < 0 || lastX < 0) continue;
    for (const x of [...xs, lastX]) {
      if (x > lastX || x + turned.width >= least) continue;
      for (const y of [...ys, highestY]) {
        if (y > highestY) continue;
        const spot = { bin, variant, x, y };
        if (!isFree(field, piece, spot, turned)) continue;
        slide(field, piece, spot, turned);
        const end = spot.x + turned.width;
        if (end < least) [best, least] = [spot, end];
        break;
      }
    }
  }
  return best;
}

/** Where boxes of a bin end, in order; 0 first. */
function cornersIn(
  { lie, rights, tops }: Field,
  bin: number,
): { readonly xs: number[]; readonly ys: number[] } {
  const xs = [0];
  const ys = [0];
  for (let piece = 0; piece < lie.bins.length; piece++) {
    if (lie.bins[piece] !== bin) continue;
    xs.push(rights[piece] ?? 0);
    ys.push(tops[piece] ?? 0);
  }
  return { xs: xs.sort((a, b) => a - b), ys: ys.sort((a, b) => a - b) };
}

function flattest({ variants }: Shape): readonly number[] {
  const order = variants.map((_, index) => index);
  if (order.length <= MOST_ANGLES) return order;
  const size = (index: number) => at(variants, index).width * at(variants, index).height;
  return order.sort((a, b) => size(a) - size(b)).slice(0, MOST_ANGLES);
}

/** Down, then back, then down again, as far as it goes in halving steps. */
function slide(field: Field, piece: number, spot: Spot, turned: Variant): void {
  for (const [dx, dy] of [
    [0, 1],
    [1, 0],
    [0, 1],
  ] as const) {
    for (let step = dx * turned.width + dy * turned.height; step > LEAST_SLIDE; step = Math.floor(step / 2)) {
      const next = { ...spot, x: spot.x - dx * step, y: spot.y - dy * step };
      if (next.x < 0 || next.y < 0 || !isFree(field, piece, next, turned)) continue;
      spot.x = next.x;
      spot.y = next.y;
    }
  }
}

const isFree = (field: Field, piece: number, spot: Spot, turned: Variant): boolean =>
  lossAt(field, piece, spot, turned, Number.MIN_VALUE) === 0;
