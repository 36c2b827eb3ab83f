import { at } from "../foundation/index.ts";
import { foldOf, planesOf } from "./crease-angle.ts";
import { EDGE_NUMBERS } from "./evaluate-edge.ts";
import type { GridLines } from "./grid-lines.ts";
import { type BendLimits, fanCost, type RulingEnds, rulingCost } from "./ruling-cost.ts";
import { creaseCharge, SPACING_PULL } from "./search-charges.ts";
import type { FanApex } from "./types.ts";

/** A ruling of a path, and how the sheet got there from the one before. */
export interface PathStep {
  readonly firstMm: number;
  readonly secondMm: number;
  readonly arrival: FanApex;
}

/** The cheapest path and what it costs, rad². */
export interface GridPath {
  readonly steps: readonly PathStep[];
  readonly cost: number;
}

/** The part of the grid that a search may use: for each first line the least and the last second line. */
export interface Band {
  readonly low: Int32Array;
  readonly high: Int32Array;
}

/** Steps of a path on the grid: lines moved on the first and on the second edge. */
const FIRST_STEPS = Int32Array.of(1, 1, 0, 1, 2);
const SECOND_STEPS = Int32Array.of(1, 0, 1, 2, 1);

/** How the sheet gets to a ruling. The order breaks ties. */
const WAYS: readonly FanApex[] = ["none", "first", "second"];

/**
 * The cheapest monotone path of rulings over a grid from the first to the last ruling: (twist² + bend²) by swept
 * length, the charge for creases and the pull toward even spacing. At corners and ends of edges the path knows whether
 * it came by a fan.
 */
export function searchGrid(
  first: GridLines,
  second: GridLines,
  band: Band,
  settings: GridSettings,
): GridPath {
  const grid = openGrid(first, second, band, settings);
  const rows = first.atMm.length;
  for (let i = 0; i < rows; i++)
    for (let j = i32(band.low, i); j <= i32(band.high, i); j++) {
      if (i + j > 0) arrive(grid, i, j);
      depart(grid, i, j);
    }
  return pathBack(grid);
}

export const wholeBand = (first: GridLines, second: GridLines): Band => ({
  low: new Int32Array(first.atMm.length),
  high: new Int32Array(first.atMm.length).fill(second.atMm.length - 1),
});

export interface GridSettings {
  readonly limits: BendLimits;
  /** The least crease that this grid can tell from none. */
  readonly leastCreaseRad: number;
}

interface Grid extends GridSettings {
  readonly first: GridLines;
  readonly second: GridLines;
  readonly band: Band;
  /** Room for the planes on both sides of a ruling. */
  readonly planesBefore: Float64Array;
  readonly planesAfter: Float64Array;
  /** Place of (i, low) in the lists below. */
  readonly rowStart: Int32Array;
  /** Cost of a ruling before and after it. */
  readonly costBefore: Float64Array;
  readonly costAfter: Float64Array;
  /** Least cost of arriving by each way, and of having left by each; three a ruling. */
  readonly arrived: Float64Array;
  readonly cameFrom: Int32Array;
  readonly left: Float64Array;
  readonly leftFrom: Int8Array;
  /** 1 / length of both edges, or 0 for a point; a quarter of 1 / swept length: half a trapezoid, half of both edges. */
  readonly firstScale: number;
  readonly secondScale: number;
  readonly sweptScale: number;
}

function openGrid(first: GridLines, second: GridLines, band: Band, settings: GridSettings): Grid {
  const { limits } = settings;
  const rows = first.atMm.length;
  const rowStart = new Int32Array(rows + 1);
  for (let i = 0; i < rows; i++)
    rowStart[i + 1] = i32(rowStart, i) + i32(band.high, i) - i32(band.low, i) + 1;
  const size = i32(rowStart, rows);
  const [firstMm, secondMm] = [lastOf(first.atMm), lastOf(second.atMm)];
  const grid: Grid = {
    first,
    second,
    band,
    ...settings,
    planesBefore: new Float64Array(6),
    planesAfter: new Float64Array(6),
    rowStart,
    costBefore: new Float64Array(size),
    costAfter: new Float64Array(size),
    arrived: new Float64Array(3 * size).fill(Number.POSITIVE_INFINITY),
    cameFrom: new Int32Array(3 * size).fill(-1),
    left: new Float64Array(3 * size).fill(Number.POSITIVE_INFINITY),
    leftFrom: new Int8Array(3 * size),
    firstScale: firstMm > 0 ? 1 / firstMm : 0,
    secondScale: secondMm > 0 ? 1 / secondMm : 0,
    sweptScale: 1 / (2 * (firstMm + secondMm)),
  };
  for (let i = 0; i < rows; i++)
    for (let j = i32(band.low, i); j <= i32(band.high, i); j++) {
      const place = placeOf(grid, i, j);
      const cost = rulingCost(endsOf(grid, i, j, "before"), limits);
      const hasSides = u8(first.isApex, i) + u8(second.isApex, j) > 0;
      grid.costBefore[place] = cost;
      grid.costAfter[place] = hasSides ? rulingCost(endsOf(grid, i, j, "after"), limits) : cost;
    }
  return grid;
}

/** The least cost of coming to a ruling by each way. */
function arrive(grid: Grid, i: number, j: number): void {
  const { first, second, band, arrived, left } = grid;
  const place = placeOf(grid, i, j);
  const fanOnFirst = u8(first.isApex, i);
  const fanOnSecond = u8(second.isApex, j);
  for (let k = 0; k < FIRST_STEPS.length; k++) {
    const fromI = i - i32(FIRST_STEPS, k);
    const fromJ = j - i32(SECOND_STEPS, k);
    if (fromI < 0 || fromJ < i32(band.low, fromI) || fromJ > i32(band.high, fromI)) continue;
    if (fromI + 1 < i && passesApex(first, fromI, i)) continue;
    if (fromJ + 1 < j && passesApex(second, fromJ, j)) continue;
    const way = fromI === i ? fanOnFirst : fromJ === j ? 2 * fanOnSecond : 0;
    const from = placeOf(grid, fromI, fromJ);
    const start = f64(left, 3 * from + way);
    const best = f64(arrived, 3 * place + way);
    if (start >= best) continue;
    const da = f64(first.atMm, i) - f64(first.atMm, fromI);
    const db = f64(second.atMm, j) - f64(second.atMm, fromJ);
    const rulings =
      way === 0
        ? f64(grid.costAfter, from) + f64(grid.costBefore, place)
        : fanCost(endsOf(grid, fromI, fromJ, "after"), at(WAYS, way), grid.limits) +
          fanCost(endsOf(grid, i, j, "before"), at(WAYS, way), grid.limits);
    const cost = start + pullOf(grid, da, db) + (da + db) * grid.sweptScale * rulings;
    if (cost >= best) continue;
    arrived[3 * place + way] = cost;
    grid.cameFrom[3 * place + way] = 3 * from + i8(grid.leftFrom, 3 * from + way);
  }
}

function pullOf({ firstScale, secondScale }: Grid, da: number, db: number): number {
  const alpha = da * firstScale;
  const beta = db * secondScale;
  return (SPACING_PULL * (alpha - beta) * (alpha - beta)) / (2 * (alpha + beta));
}

/** The least cost of going on from a ruling by each way, creases charged. */
function depart(grid: Grid, i: number, j: number): void {
  const place = placeOf(grid, i, j);
  if (i + j === 0) {
    grid.left.fill(0, 0, 3);
    return;
  }
  if (u8(grid.first.isApex, i) + u8(grid.second.isApex, j) === 0) {
    grid.left[3 * place] = f64(grid.arrived, 3 * place);
    return;
  }
  const before = planesOf(endsOf(grid, i, j, "before"), grid.planesBefore);
  const after = planesOf(endsOf(grid, i, j, "after"), grid.planesAfter);
  for (let came = 0; came < 3; came++) {
    const cost = f64(grid.arrived, 3 * place + came);
    if (cost === Number.POSITIVE_INFINITY) continue;
    for (let goes = 0; goes < 3; goes++) {
      if (goes === 1 && u8(grid.first.isApex, i) === 0) continue;
      if (goes === 2 && u8(grid.second.isApex, j) === 0) continue;
      if (cost >= f64(grid.left, 3 * place + goes)) continue;
      const angle = foldOf(before, after, at(WAYS, came), at(WAYS, goes));
      const whole = cost + creaseCharge(angle, grid.leastCreaseRad);
      if (whole >= f64(grid.left, 3 * place + goes)) continue;
      grid.left[3 * place + goes] = whole;
      grid.leftFrom[3 * place + goes] = came;
    }
  }
}

function pathBack(grid: Grid): GridPath {
  const last = i32(grid.rowStart, grid.first.atMm.length) - 1;
  const ways = [0, 1, 2].map((way) => f64(grid.arrived, 3 * last + way));
  let state = 3 * last + ways.indexOf(Math.min(...ways));
  const steps: PathStep[] = [];
  let i = grid.first.atMm.length - 1;
  while (state >= 0) {
    const place = Math.floor(state / 3);
    while (i32(grid.rowStart, i) > place) i--;
    const j = place - i32(grid.rowStart, i) + i32(grid.band.low, i);
    steps.push({
      firstMm: f64(grid.first.atMm, i),
      secondMm: f64(grid.second.atMm, j),
      arrival: at(WAYS, state % 3),
    });
    state = place === 0 ? -1 : i32(grid.cameFrom, state);
  }
  return { steps: steps.reverse(), cost: Math.min(...ways) };
}

const passesApex = ({ apexesBefore }: GridLines, from: number, to: number): boolean =>
  i32(apexesBefore, to) > i32(apexesBefore, from + 1);

const placeOf = ({ rowStart, band }: Grid, i: number, j: number): number =>
  i32(rowStart, i) + j - i32(band.low, i);

const endsOf = ({ first, second }: Grid, i: number, j: number, side: "before" | "after"): RulingEnds => ({
  first: first[side],
  firstOffset: i * EDGE_NUMBERS,
  second: second[side],
  secondOffset: j * EDGE_NUMBERS,
});

const lastOf = (list: Float64Array): number => list[list.length - 1] ?? 0;

// One reader for each kind of list, so that each stays fast.
const f64 = (list: Float64Array, index: number): number => list[index] ?? 0;
const i32 = (list: Int32Array, index: number): number => list[index] ?? 0;
const u8 = (list: Uint8Array, index: number): number => list[index] ?? 0;
const i8 = (list: Int8Array, index: number): number => list[index] ?? 0;
