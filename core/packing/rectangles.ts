import { at } from "../foundation/index.ts";
import type { Bin } from "./field.ts";
import { nextRandom, type RandomState, seedRandom } from "./random.ts";

/** A rectangle to lay, whole units: its size at each of its angles. */
export interface RectanglePiece {
  readonly turns: readonly { readonly width: number; readonly height: number }[];
}

/** Where a rectangle lies: its bin, which of its turns, and its corner nearest the bin's. */
export interface RectangleSpot {
  readonly bin: number;
  readonly turn: number;
  readonly x: number;
  readonly y: number;
}

/** A search for the best order of rectangles: plain data, the same for the same seed and steps. */
export interface RectangleSearch {
  readonly pieces: readonly RectanglePiece[];
  /** The bins in the order in which they are filled. On a roll one that is as long as it takes. */
  readonly bins: readonly Bin[];
  readonly random: RandomState;
  readonly order: readonly number[];
  readonly laid: LaidRectangles;
  readonly best: LaidRectangles;
  readonly sinceGain: number;
}

/** Rectangles laid in one order; a spot is undefined where the bins are full. */
export interface LaidRectangles {
  readonly order: readonly number[];
  readonly spots: readonly (RectangleSpot | undefined)[];
  readonly binsUsed: number;
  /** How far the last bin is used. */
  readonly lastUsed: number;
  /** Lower is better. */
  readonly cost: number;
}

/** Orders tried without gain before the search goes on from the best one, shuffled a little. */
const PATIENCE = 400;
const SHUFFLES = 4;
/** A step of the skyline: how far the bin is filled along a stretch of its width. */
interface Segment {
  y: number;
  height: number;
  x: number;
}

export function startRectangles(
  pieces: readonly RectanglePiece[],
  bins: readonly Bin[],
  seed: number,
): RectangleSearch {
  const areaOf = (index: number) => {
    const { width, height } = at(at(pieces, index).turns, 0);
    return width * height;
  };
  const order = pieces.map((_, index) => index).sort((a, b) => areaOf(b) - areaOf(a));
  const laid = layInOrder(pieces, bins, order);
  return { pieces, bins, random: seedRandom(seed), order, laid, best: laid, sinceGain: 0 };
}

/** The search some orders later: two rectangles change places, and the new order stays unless it is worse. */
export function stepRectangles(search: RectangleSearch, orders: number): RectangleSearch {
  const random = search.random.slice();
  let { order, laid, best, sinceGain } = search;
  for (let k = 0; k < orders; k++) {
    if (sinceGain >= PATIENCE) {
      order = swapped(best.order, SHUFFLES, random);
      laid = layInOrder(search.pieces, search.bins, order);
      sinceGain = 0;
    }
    const nextOrder = swapped(order, 1, random);
    const next = layInOrder(search.pieces, search.bins, nextOrder);
    sinceGain = next.cost < laid.cost ? 0 : sinceGain + 1;
    if (next.cost <= laid.cost) [order, laid] = [nextOrder, next];
    if (laid.cost < best.cost) best = laid;
  }
  return { ...search, random, order, laid, best, sinceGain };
}

function swapped(order: readonly number[], times: number, random: RandomState): readonly number[] {
  const next = [...order];
  for (let k = 0; k < times; k++) {
    const i = Math.floor(nextRandom(random) * next.length);
    const j = Math.floor(nextRandom(random) * next.length);
    [next[i], next[j]] = [at(next, j), at(next, i)];
  }
  return next;
}

/**
 * Rectangles on a skyline: always at its lowest place, and there the one that fits best (best fit: Burke, Kendall &
 * Whitwell 2004; fitness after Leung, Zhang & Sim 2011), the earlier one of the order where several fit as well. A bin
 * is filled until nothing more fits, then the next.
 */
export function layInOrder(
  pieces: readonly RectanglePiece[],
  bins: readonly Bin[],
  order: readonly number[],
): LaidRectangles {
  const spots: (RectangleSpot | undefined)[] = pieces.map(() => undefined);
  let rest = order;
  let [binsUsed, lastUsed] = [0, 0];
  for (const [index, bin] of bins.entries()) {
    if (rest.length === 0) break;
    const before = rest.length;
    rest = fillBin(pieces, rest, bin, index, spots);
    if (rest.length === before) continue;
    binsUsed = index + 1;
    lastUsed = Math.max(
      ...spots.flatMap((spot, piece) =>
        spot?.bin === index ? spot.x + at(at(pieces, piece).turns, spot.turn).width : [],
      ),
    );
  }
  const length = Math.max(1, ...bins.map((bin) => (Number.isFinite(bin.length) ? bin.length : 1)));
  const cost = (rest.length * (bins.length + 1) + Math.max(0, binsUsed - 1)) * length + lastUsed;
  return { order, spots, binsUsed, lastUsed, cost };
}

/** Fills one bin and returns the rectangles that are left, in their order. */
function fillBin(
  pieces: readonly RectanglePiece[],
  order: readonly number[],
  { length, width }: Bin,
  bin: number,
  spots: (RectangleSpot | undefined)[],
): readonly number[] {
  const left = [...order];
  const skyline: Segment[] = [{ y: 0, height: width, x: 0 }];
  while (left.length > 0) {
    const lowest = lowestOf(skyline);
    const segment = at(skyline, lowest);
    if (segment.x >= length) break;
    const below = lowest > 0 ? at(skyline, lowest - 1).x - segment.x : Number.POSITIVE_INFINITY;
    const above =
      lowest + 1 < skyline.length ? at(skyline, lowest + 1).x - segment.x : Number.POSITIVE_INFINITY;
    const choice = bestFit(pieces, left, segment, { below, above, room: length - segment.x });
    if (choice === undefined) {
      if (skyline.length === 1) break;
      raise(skyline, lowest, Math.min(below, above));
      continue;
    }
    const { place, turn, isAbove } = choice;
    const [piece = 0] = left.splice(place, 1);
    const { width: deep, height } = at(at(pieces, piece).turns, turn);
    const y = isAbove ? segment.y + segment.height - height : segment.y;
    spots[piece] = { bin, turn, x: segment.x, y };
    const laid = { y, height, x: segment.x + deep };
    const open = { y: isAbove ? segment.y : y + height, height: segment.height - height, x: segment.x };
    skyline.splice(lowest, 1, ...(open.height === 0 ? [laid] : isAbove ? [open, laid] : [laid, open]));
    merge(skyline);
  }
  return left;
}

function lowestOf(skyline: readonly Segment[]): number {
  let lowest = 0;
  for (let k = 1; k < skyline.length; k++) if (at(skyline, k).x < at(skyline, lowest).x) lowest = k;
  return lowest;
}

interface Walls {
  /** How far the neighbours stand out beyond the segment, and how long the bin goes on. */
  readonly below: number;
  readonly above: number;
  readonly room: number;
}

function bestFit(
  pieces: readonly RectanglePiece[],
  left: readonly number[],
  segment: Segment,
  { below, above, room }: Walls,
): { readonly place: number; readonly turn: number; readonly isAbove: boolean } | undefined {
  let best: { place: number; turn: number; isAbove: boolean } | undefined;
  let most = -1;
  for (let place = 0; place < left.length; place++) {
    const { turns } = at(pieces, at(left, place));
    for (let turn = 0; turn < turns.length; turn++) {
      const { width, height } = at(turns, turn);
      if (height > segment.height || width > room) continue;
      const fills = height === segment.height;
      const fitsBelow = width === below;
      const fitsAbove = width === above;
      const fitness = (fills ? 2 : 0) + (fitsBelow ? 1 : 0) + (fitsAbove && (fills || !fitsBelow) ? 1 : 0);
      if (fitness > most) {
        most = fitness;
        // Against the higher wall, unless its end is flush with the other one.
        best = { place, turn, isAbove: fitsBelow === fitsAbove ? above > below : fitsAbove };
      }
    }
  }
  return best;
}

function raise(skyline: Segment[], index: number, by: number): void {
  at(skyline, index).x += by;
  merge(skyline);
}

/** Neighbours of one height become one segment. */
function merge(skyline: Segment[]): void {
  for (let k = skyline.length - 1; k > 0; k--) {
    const [before, here] = [at(skyline, k - 1), at(skyline, k)];
    if (before.x !== here.x) continue;
    before.height += here.height;
    skyline.splice(k, 1);
  }
}
