import { at } from "../foundation/index.ts";
import { type Bin, copyLie, type Lie } from "./field.ts";
import { clampInto } from "./move-piece.ts";
import { binOf, sizeAt } from "./prepare.ts";
import { nextRandom } from "./random.ts";
import {
  fieldOf,
  isRoll,
  leastExtent,
  lockedOf,
  piecesOf,
  type Search,
  scatter,
  withAttempt,
} from "./search-state.ts";

/**
 * From the best layout, the last bin shorter by a share of its full length: what lies right of a random cut moves
 * left. A last sheet with no room left for a piece is given up whole, and the one before it becomes the last.
 * Undefined where it cannot be shorter by as much.
 */
export function shortened(search: Search, share: number): Search | undefined {
  const { incumbent, random } = search;
  if (incumbent === undefined) return undefined;
  const last = incumbent.bins.length - 1;
  const { length, width } = at(incumbent.bins, last);
  const next = Math.floor(length - Math.max(1, fullLength(search, last) * share));
  const { shapes } = piecesOf(search);
  const lie = copyLie(incumbent.lie);
  const isGivenUp = next < leastLength(search, lie, last);
  if (isGivenUp && !canGiveUp(search, lie, last)) return undefined;
  const rest = incumbent.bins.slice(0, -1);
  const bins = isGivenUp ? rest : [...rest, { length: next, width }];
  const cut = nextRandom(random) * length;
  for (const [index, shape] of shapes.entries()) {
    if (lie.bins[index] !== last || lockedOf(search, index) !== undefined) continue;
    const turned = at(shape.variants, lie.variants[index] ?? 0);
    const x = lie.xs[index] ?? 0;
    const moved = x + turned.width / 2 > cut ? x - (length - next) : x;
    const spot = { bin: last, variant: lie.variants[index] ?? 0, x: moved, y: lie.ys[index] ?? 0 };
    if (isGivenUp || clampInto(bins, spot, turned) === undefined) scatter(shape, bins, lie, index, random);
    else lie.xs[index] = spot.x;
  }
  return withAttempt({ ...search, pool: [] }, bins, lie);
}

/** The length of the last sheet when it is whole; of a roll what it takes now. */
function fullLength(search: Search, last: number): number {
  const size = sizeAt(search.prepared, last);
  const whole = size === undefined ? undefined : binOf(size, search.prepared.inset).length;
  return whole ?? at(search.incumbent?.bins ?? [], last).length;
}

/** The least length of the last bin: of a roll what its longest piece takes, of a sheet what any piece takes. */
function leastLength(search: Search, lie: Lie, last: number): number {
  const { shapes } = piecesOf(search);
  const { width } = at(search.incumbent?.bins ?? [], last);
  const extents = shapes.map((shape) => leastExtent(shape, width)).filter(Number.isFinite);
  const locked = shapes.flatMap((shape, index) =>
    lie.bins[index] === last && lockedOf(search, index) !== undefined
      ? [(lie.xs[index] ?? 0) + at(shape.variants, 0).width]
      : [],
  );
  return Math.max(...locked, last === 0 ? Math.max(...extents) : Math.min(...extents));
}

const canGiveUp = (search: Search, lie: Lie, last: number): boolean =>
  last > 0 &&
  !search.pieces.some((_, index) => lie.bins[index] === last && lockedOf(search, index) !== undefined);

const ROLL_LONGER = 1.08;

/**
 * More room after the first length did not do: a longer roll, one more sheet, or one piece less on a full stock.
 * Undefined where a roll would become longer than the best layout.
 */
export function widened(search: Search): Search | undefined {
  const lie = copyLie(search.attempt.leastLie);
  if (isRoll(search)) {
    const { length, width } = at(search.bins, 0);
    const next = Math.ceil(length * ROLL_LONGER);
    const best = search.incumbent?.bins[0]?.length ?? Number.POSITIVE_INFINITY;
    return next < best ? withAttempt(search, [{ length: next, width }], lie) : undefined;
  }
  const size = sizeAt(search.prepared, search.bins.length);
  const bins: readonly Bin[] = size === undefined ? [] : [...search.bins, binOf(size, search.prepared.inset)];
  return size === undefined ? withoutWorst({ ...search, lie }) : withAttempt(search, bins, lie);
}

/** The search without the free piece that collides most. */
function withoutWorst(search: Search): Search {
  const { losses } = fieldOf(search);
  const count = search.pieces.length;
  const sums = search.pieces.map((_, index) =>
    lockedOf(search, index) === undefined
      ? losses.subarray(index * count, (index + 1) * count).reduce((sum, loss) => sum + loss, 0)
      : -1,
  );
  const worst = sums.indexOf(Math.max(...sums));
  const isKept = (_: unknown, index: number) => index !== worst;
  const { bins, variants, xs, ys } = search.lie;
  const lie = {
    bins: bins.filter(isKept),
    variants: variants.filter(isKept),
    xs: xs.filter(isKept),
    ys: ys.filter(isKept),
  };
  const pieces = search.pieces.filter(isKept);
  return withAttempt(
    { ...search, pieces, phase: pieces.length === 0 ? "done" : search.phase },
    search.bins,
    lie,
  );
}
