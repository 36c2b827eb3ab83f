import { at } from "../foundation/index.ts";
import { type EdgeRoom, pairDepth } from "./pair-loss.ts";
import type { Shape, Variant } from "./shapes.ts";

/** Where every piece lies: bin, index of its variant and the corner of its box, units. */
export interface Lie {
  readonly bins: Int32Array;
  readonly variants: Int32Array;
  readonly xs: Float64Array;
  readonly ys: Float64Array;
}

/** A rectangle that pieces are laid in, units. */
export interface Bin {
  readonly length: number;
  readonly width: number;
}

/** A place for one piece. */
export interface Spot {
  bin: number;
  variant: number;
  x: number;
  y: number;
}

/**
 * Pieces in bins with their collisions: `losses` holds for each pair how bad it is, `weights` how much it counts now.
 * Both are square and symmetric. The search changes it in place.
 */
export interface Field {
  readonly shapes: readonly Shape[];
  /** Pieces that stay where they are. What two of them do to each other is not the search's to judge. */
  readonly isLocked: readonly boolean[];
  readonly bins: readonly Bin[];
  readonly lie: Lie;
  /** The variant of each piece as it lies now, and the far corner of its box. */
  readonly turned: Variant[];
  readonly rights: Float64Array;
  readonly tops: Float64Array;
  /** For each piece how much a collision counts, and the depth below which the decaying branch does. */
  readonly hulls: Float64Array;
  readonly shallows: Float64Array;
  readonly losses: Float64Array;
  readonly weights: Float64Array;
  readonly room: EdgeRoom;
}

export const newLie = (count: number): Lie => ({
  bins: new Int32Array(count),
  variants: new Int32Array(count),
  xs: new Float64Array(count),
  ys: new Float64Array(count),
});

export const copyLie = ({ bins, variants, xs, ys }: Lie): Lie => ({
  bins: bins.slice(),
  variants: variants.slice(),
  xs: xs.slice(),
  ys: ys.slice(),
});

/** A field with the losses of every pair computed. */
export function openField(
  { shapes, isLocked }: Pick<Field, "shapes" | "isLocked">,
  bins: readonly Bin[],
  lie: Lie,
  weights: Float64Array,
): Field {
  const longest = Math.max(0, ...shapes.map(({ variants }) => at(variants, 0).edges.length));
  const field: Field = {
    shapes,
    isLocked,
    bins,
    lie,
    turned: shapes.map(({ variants }, piece) => at(variants, lie.variants[piece] ?? 0)),
    rights: new Float64Array(shapes.length),
    tops: new Float64Array(shapes.length),
    hulls: Float64Array.from(shapes, ({ hullSize }) => hullSize),
    shallows: Float64Array.from(shapes, ({ shallow }) => shallow),
    losses: new Float64Array(shapes.length ** 2),
    weights,
    room: new Int32Array(longest),
  };
  refreshField(field);
  return field;
}

/**
 * The weighted loss of a piece if it lay at a spot, against all others as they lie; infinite as soon as it is known to
 * reach the bound.
 */
export function lossAt(field: Field, piece: number, spot: Spot, variant: Variant, bound: number): number {
  const { bins, xs, ys } = field.lie;
  const { turned, weights, rights, tops, hulls, shallows, room } = field;
  const count = turned.length;
  const row = piece * count;
  const hull = f64(hulls, piece);
  const shallowHere = f64(shallows, piece);
  const { bin, x, y } = spot;
  const right = x + variant.width;
  const top = y + variant.height;
  let sum = 0;
  for (let other = 0; other < count; other++) {
    const otherX = f64(xs, other);
    const otherY = f64(ys, other);
    if (otherX >= right || f64(rights, other) <= x || otherY >= top || f64(tops, other) <= y) continue;
    if (bins[other] !== bin || other === piece) continue;
    const weight = f64(weights, row + other);
    const scale = hull * f64(hulls, other);
    const most = (bound - sum) / weight;
    const second = turned[other] ?? variant;
    const shallow = Math.max(shallowHere, f64(shallows, other));
    const depth = pairDepth(variant, second, otherX - x, otherY - y, shallow, (most * most) / scale, room);
    if (depth === 0) continue;
    sum += Math.sqrt(depth * scale) * weight;
    if (sum >= bound) return Number.POSITIVE_INFINITY;
  }
  return sum;
}

const f64 = (list: Float64Array, index: number): number => list[index] ?? 0;

/** Brings everything else up to date after the lie was changed from outside. */
export function refreshField(field: Field): void {
  for (const [piece, { variants }] of field.shapes.entries()) {
    turnPiece(field, piece, at(variants, field.lie.variants[piece] ?? 0));
  }
  for (let piece = 0; piece < field.shapes.length; piece++) writeLosses(field, piece, piece + 1);
}

/** Puts a piece at a spot and brings the losses of its pairs up to date. */
export function putPiece(field: Field, piece: number, spot: Spot): void {
  const { bins, variants, xs, ys } = field.lie;
  bins[piece] = spot.bin;
  variants[piece] = spot.variant;
  xs[piece] = spot.x;
  ys[piece] = spot.y;
  turnPiece(field, piece, at(at(field.shapes, piece).variants, spot.variant));
  writeLosses(field, piece, 0);
}

function turnPiece({ turned, rights, tops, lie }: Field, piece: number, variant: Variant): void {
  turned[piece] = variant;
  rights[piece] = f64(lie.xs, piece) + variant.width;
  tops[piece] = f64(lie.ys, piece) + variant.height;
}

/** The unweighted loss of all pairs. */
export function totalLoss(field: Field): number {
  let sum = 0;
  for (const loss of field.losses) sum += loss;
  return sum / 2;
}

/** The weighted loss of a piece as it lies. */
export function lossOf(field: Field, piece: number): number {
  const count = field.shapes.length;
  let sum = 0;
  for (let k = piece * count; k < (piece + 1) * count; k++)
    sum += f64(field.losses, k) * f64(field.weights, k);
  return sum;
}

/** The losses of a piece with all others from one index on. */
function writeLosses(field: Field, piece: number, from: number): void {
  const { bins } = field.lie;
  const count = field.shapes.length;
  for (let other = from; other < count; other++) {
    if (other === piece) continue;
    const loss = bins[other] === bins[piece] ? pairLoss(field, piece, other) : 0;
    field.losses[piece * count + other] = loss;
    field.losses[other * count + piece] = loss;
  }
}

/** The sum over poles is rounded in an order, so it is always taken from the piece of the lower index. */
function pairLoss(field: Field, one: number, other: number): number {
  const { hulls, shallows, isLocked, room, turned } = field;
  const { xs, ys } = field.lie;
  const first = Math.min(one, other);
  const second = Math.max(one, other);
  const [a, b] = [turned[first], turned[second]];
  if (a === undefined || b === undefined || (isLocked[first] && isLocked[second])) return 0;
  const shallow = Math.max(f64(shallows, first), f64(shallows, second));
  const dx = f64(xs, second) - f64(xs, first);
  const dy = f64(ys, second) - f64(ys, first);
  const depth = pairDepth(a, b, dx, dy, shallow, Number.POSITIVE_INFINITY, room);
  return depth === 0 ? 0 : Math.sqrt(depth * f64(hulls, first) * f64(hulls, second));
}
