import type { BendZone } from "../bending/index.ts";
import { at } from "../foundation/index.ts";
import type { FlatLoop } from "../patterns/index.ts";
import type { CutAxis } from "./divide-loops.ts";

/** A cut keeps this far from where the outline turns back, so that it leaves no sliver. */
const SLIVER_MM = 1;
/** Evenly spaced places that are tried besides the special ones. */
const EVEN_PLACES = 16;

/** An outline that turns back more often than this is ragged: its corners are no places to choose from. */
const MOST_TURNS = 24;

export interface PlaceSettings {
  /** Ends of the island along the axis. */
  readonly fromMm: number;
  readonly toMm: number;
  /** Lengths that the stock gives along the axis. */
  readonly limitsMm: readonly number[];
  /** Places of their own: the centre line, a stagger away from a neighbour's seam. */
  readonly wishesMm: readonly number[];
  /** Bends along the axis (none across the rulings). */
  readonly zones: readonly BendZone[];
}

/**
 * Places where an island may be cut, ascending, both ends included: full stock lengths from either end, even
 * divisions, middles and borders of flat zones, wishes, both sides of every place where the outline turns
 * back, and a plain grid. None lies within a millimetre of where the outline turns back.
 */
export function cutPlaces(loops: readonly FlatLoop[], axis: CutAxis, settings: PlaceSettings): number[] {
  const { fromMm, toMm, limitsMm, wishesMm } = settings;
  const turnsMm = turningPlaces(loops, axis);
  const spanMm = toMm - fromMm;
  const proposals = [
    ...wishesMm,
    ...limitsMm.flatMap((limitMm) => stepsOf(limitMm, fromMm, toMm)),
    ...limitsMm.flatMap((limitMm) => evenSplits(Math.ceil(spanMm / limitMm), fromMm, toMm)),
    ...Array.from({ length: EVEN_PLACES }, (_, i) => fromMm + ((i + 1) * spanMm) / (EVEN_PLACES + 1)),
    ...settings.zones.filter(({ verdict }) => verdict === "flat").flatMap(placesInZone),
    ...(turnsMm.length <= MOST_TURNS ? turnsMm : []).flatMap((turnMm) => [
      turnMm - SLIVER_MM,
      turnMm + SLIVER_MM,
    ]),
  ];
  const places = proposals
    .map((placeMm) => clearOfTurns(placeMm, turnsMm))
    .filter((placeMm) => placeMm > fromMm && placeMm < toMm && isClear(placeMm, turnsMm))
    .sort((a, b) => a - b);
  const distinct = places.filter((placeMm, i) => i === 0 || placeMm - at(places, i - 1) > 1e-6);
  return [fromMm, ...distinct, toMm];
}

/** Coordinates where the outline turns back along the axis, with both ends of a stretch that runs square to it. */
function turningPlaces(loops: readonly FlatLoop[], axis: CutAxis): number[] {
  const turns = new Set<number>();
  for (const loop of loops) {
    let first = 0;
    let rising = 0;
    let before = at(at(loop.edges, 0).points, 0)[axis];
    for (const { points } of loop.edges) {
      for (const point of points) {
        const value = point[axis];
        if (value === before) continue;
        const direction = value > before ? 1 : -1;
        if (rising === 0) first = direction;
        else if (direction !== rising) turns.add(before);
        rising = direction;
        before = value;
      }
    }
    // The walk ends where it began: that place turns back too when the last direction is not the first.
    if (rising !== first) turns.add(before);
  }
  return [...turns].sort((a, b) => a - b);
}

function stepsOf(limitMm: number, fromMm: number, toMm: number): number[] {
  const count = Math.min(20, Math.floor((toMm - fromMm) / limitMm));
  return Array.from({ length: count }, (_, i) => (i + 1) * limitMm).flatMap((stepMm) => [
    fromMm + stepMm,
    toMm - stepMm,
  ]);
}

function evenSplits(least: number, fromMm: number, toMm: number): number[] {
  const counts = [least, least + 1].filter((count) => count > 1 && count <= 40);
  return counts.flatMap((count) =>
    Array.from({ length: count - 1 }, (_, i) => fromMm + ((i + 1) * (toMm - fromMm)) / count),
  );
}

const placesInZone = ({ fromUMm, toUMm }: BendZone): number[] => [
  fromUMm + SLIVER_MM,
  (fromUMm + toUMm) / 2,
  toUMm - SLIVER_MM,
];

const nearestTurn = (placeMm: number, turnsMm: readonly number[]): number =>
  turnsMm.reduce(
    (best, turnMm) => (Math.abs(turnMm - placeMm) < Math.abs(best - placeMm) ? turnMm : best),
    Number.POSITIVE_INFINITY,
  );

const isClear = (placeMm: number, turnsMm: readonly number[]): boolean =>
  Math.abs(nearestTurn(placeMm, turnsMm) - placeMm) >= SLIVER_MM - 1e-9;

function clearOfTurns(placeMm: number, turnsMm: readonly number[]): number {
  if (isClear(placeMm, turnsMm)) return placeMm;
  const turnMm = nearestTurn(placeMm, turnsMm);
  return placeMm < turnMm ? turnMm - SLIVER_MM : turnMm + SLIVER_MM;
}
