import { at } from "../foundation/index.ts";
import { layInTurn } from "./construct.ts";
import { type Bin, type Lie, newLie } from "./field.ts";
import { binOf, type Prepared, rollWidth, sizeAt } from "./prepare.ts";
import { seedRandom } from "./random.ts";
import {
  type Incumbent,
  isRoll,
  leastExtent,
  lockedOf,
  piecesOf,
  type Search,
  scatter,
  tightened,
  withAttempt,
  writeSpot,
} from "./search-state.ts";

/** Share of a roll's or sheets' area that pieces are first laid in. */
const [ROLL_DENSITY, SHEET_DENSITY] = [0.72, 0.75];
/** A roll begins at least and at most this much as long as with pieces laid in turn. */
const [SHORTEST, LONGEST] = [0.85, 0.98];

/**
 * A search at its beginning, with a first layout where one is found by laying the pieces in turn. Where the stock may
 * be too small for that, the pieces lie anywhere, collisions and all, the smallest left out if all sheets together are
 * smaller than the pieces.
 */
export function firstSearch(prepared: Prepared, seed: number, shrink: number): Search {
  const all = prepared.shapes.map((_, index) => index);
  const base = { prepared, shrink, random: seedRandom(seed), pool: [], sweeps: 0 };
  const search = { ...base, pieces: all, phase: "exploring" } as const;
  const bins = allBins(prepared);
  const { lie, left } = layInTurn(piecesOf(search), bins, prepared.locked);
  if (left.length > 0) return searchFromChaos({ ...base, incumbent: withoutLeft(lie, left, bins) });
  const used = lie.bins.reduce((most, bin) => Math.max(most, bin + 1), 0);
  const incumbent = { pieces: all, bins: tightened(search, bins.slice(0, used), lie), lie };
  if (all.length === 0) return withAttempt({ ...search, incumbent, phase: "done" }, [], lie);
  // On a roll a search that starts from chaos ends shorter than one that starts from pieces laid in turn.
  if (isRoll(search)) return searchFromChaos({ ...base, incumbent });
  return withAttempt({ ...search, incumbent }, incumbent.bins, lie);
}

/** A lie of pieces laid in turn without those that no bin took. */
function withoutLeft(lie: Lie, left: readonly number[], bins: readonly Bin[]): Incumbent {
  const isLaid = (_: unknown, index: number) => !left.includes(index);
  return {
    pieces: [...lie.bins.keys()].filter((index) => !left.includes(index)),
    bins,
    lie: {
      bins: lie.bins.filter(isLaid),
      variants: lie.variants.filter(isLaid),
      xs: lie.xs.filter(isLaid),
      ys: lie.ys.filter(isLaid),
    },
  };
}

/** Sheets, at most one for each piece; of a roll a length that takes all pieces one behind the other. */
function allBins(prepared: Prepared): readonly Bin[] {
  const { shapes, inset } = prepared;
  const width = rollWidth(prepared);
  const lengths = extentsOf(prepared, width);
  if (isRoll({ prepared })) return [{ length: lengths.reduce((sum, length) => sum + length, 0), width }];
  return shapes.flatMap((_, index) => {
    const size = sizeAt(prepared, index);
    return size === undefined ? [] : [binOf(size, inset)];
  });
}

function searchFromChaos(
  search: Omit<Search, "pieces" | "phase" | "bins" | "lie" | "weights" | "attempt">,
): Search {
  const { prepared, random } = search;
  const bins = isRoll({ prepared })
    ? firstRoll(prepared, search.incumbent?.bins[0]?.length ?? Number.POSITIVE_INFINITY)
    : firstSheets(prepared);
  const pieces = isRoll({ prepared })
    ? prepared.shapes.map((_, index) => index)
    : piecesWithin(prepared, bins);
  const lie = newLie(pieces.length);
  for (const [index, piece] of pieces.entries()) {
    const locked = lockedOf({ prepared, pieces }, index);
    if (locked === undefined) scatter(at(prepared.shapes, piece), bins, lie, index, random);
    else writeSpot(lie, index, locked);
  }
  const phase = pieces.length === 0 ? "done" : "opening";
  return withAttempt({ ...search, pieces, phase }, bins, lie);
}

function firstRoll(prepared: Prepared, laid: number): readonly Bin[] {
  const width = rollWidth(prepared);
  const within = Math.max(
    areaOf(prepared) / width / ROLL_DENSITY,
    Number.isFinite(laid) ? laid * SHORTEST : 0,
  );
  const length = Math.min(within, laid * LONGEST);
  return [{ length: Math.ceil(Math.max(length, ...extentsOf(prepared, width))), width }];
}

/** For each piece the length of roll that it needs at least; where it is locked, up to its far end. */
const extentsOf = ({ shapes, locked }: Prepared, width: number): readonly number[] =>
  shapes.map((shape, index) => {
    const spot = locked[index];
    return spot === undefined ? leastExtent(shape, width) : spot.x + at(shape.variants, 0).width;
  });

function firstSheets(prepared: Prepared): readonly Bin[] {
  const needed = Math.max(0, ...prepared.locked.map((spot) => (spot === undefined ? 0 : spot.bin + 1)));
  const area = areaOf(prepared);
  const bins: Bin[] = [];
  let room = 0;
  for (
    let size = sizeAt(prepared, 0);
    size !== undefined && (room * SHEET_DENSITY < area || bins.length < needed);
    size = sizeAt(prepared, bins.length)
  ) {
    const bin = binOf(size, prepared.inset);
    bins.push(bin);
    room += bin.length * bin.width;
  }
  return bins;
}

const areaOf = ({ shapes }: Prepared): number => shapes.reduce((sum, { area }) => sum + area, 0);

/** All pieces, or the locked ones and the largest of the others as far as the room reaches. */
function piecesWithin({ shapes, locked }: Prepared, bins: readonly Bin[]): readonly number[] {
  const room = bins.reduce((sum, { length, width }) => sum + length * width, 0);
  const isFirst = (index: number) => (locked[index] === undefined ? 0 : 1);
  const order = shapes
    .map((_, index) => index)
    .sort((a, b) => isFirst(b) - isFirst(a) || at(shapes, b).area - at(shapes, a).area);
  let taken = 0;
  return order
    .filter((index) => {
      const { area } = at(shapes, index);
      if (taken + area > room) return false;
      taken += area;
      return true;
    })
    .sort((a, b) => a - b);
}
