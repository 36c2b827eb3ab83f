import { at } from "../../foundation/index.ts";
import type { Window } from "./shares-between.ts";

/** Nearer together no hand reaches between, mm. */
const LEAST_PITCH_MM = 40;
/** A first guess at how far apart ribs stand, mm. */
const FIRST_PITCH_MM = 200;
/** How often the places of a bay are shifted all together. */
const SHIFTS = 5;
/** How strongly a stretch shrinks that asks for more than the others, and a bay grows: what is asked grows with the second to fourth power of a length. */
const POWER = 0.3;
/** By how much single places are shifted then, mm. */
const NUDGES_MM = [24, 12, 5] as const;
/** A bay that asks for more than this, evened out, is not helped by that. */
const MOST_NUDGED = 2;
/** More places than these are a slip of a setting. */
const MOST_PLACES = 150;

/** What is asked for in each stretch, by the number of the place that it begins at; 1 is just allowed. */
export type Shares = (placesMm: readonly number[], window: Window) => ReadonlyMap<number, number>;

/** A bay between two fixed places: where it lies, its own places, and the most that is asked for in it. */
interface Bay {
  readonly fromMm: number;
  readonly toMm: number;
  readonly innerMm: readonly number[];
}

/**
 * The fewest places between fixed ones with which no stretch asks for more than is allowed. Bay by bay a guess grows until it
 * is enough, its stretches shifted until they ask for alike; then places are taken away again while those that stay,
 * nudged one by one, are enough without.
 */
export function fewestPlaces(borders: readonly number[], shares: Shares): readonly number[] {
  let bays: readonly Bay[] = borders.slice(1).map((toMm, i): Bay => {
    const fromMm = at(borders, i);
    return evenly({ fromMm, toMm, innerMm: [] }, Math.max(1, Math.round((toMm - fromMm) / FIRST_PITCH_MM)));
  });
  for (let round = 0; round < 12; round++) {
    const row = rowOf(bays, shares);
    if (row.placesMm.length > MOST_PLACES) break;
    const grown = bays.map((bay, i) => {
      const asked = at(row.asked, i);
      if (asked <= 1) return bay;
      const stretches = bay.innerMm.length + 1;
      const most = Math.max(1, Math.floor((bay.toMm - bay.fromMm) / LEAST_PITCH_MM));
      return evenly(bay, Math.min(most, Math.max(stretches + 1, Math.floor(stretches * asked ** POWER))));
    });
    if (grown.every((bay, i) => bay.innerMm.length === at(bays, i).innerMm.length)) break;
    bays = grown;
  }
  for (const [i] of bays.entries()) bays = fewerIn(bays, i, shares);
  return rowOf(bays, shares).placesMm;
}

function evenly(bay: Bay, stretches: number): Bay {
  const { fromMm, toMm } = bay;
  const step = (toMm - fromMm) / stretches;
  return {
    ...bay,
    innerMm: Array.from({ length: stretches - 1 }, (_, i) => Math.round(fromMm + (i + 1) * step)),
  };
}

interface Row {
  readonly placesMm: readonly number[];
  /** The most that is asked for in each bay. */
  readonly asked: readonly number[];
}

function rowOf(bays: readonly Bay[], shares: Shares): Row {
  const placesMm = placesOf(bays);
  const all = shares(placesMm, { from: 0, to: placesMm.length - 1 });
  return { placesMm, asked: bays.map((_, i) => mostIn(all, windowOf(bays, i))) };
}

const placesOf = (bays: readonly Bay[]): readonly number[] => [
  at(bays, 0).fromMm,
  ...bays.flatMap(({ innerMm, toMm }) => [...innerMm, toMm]),
];

function windowOf(bays: readonly Bay[], index: number): Window {
  const from = bays.slice(0, index).reduce((sum, { innerMm }) => sum + innerMm.length + 1, 0);
  return { from, to: from + at(bays, index).innerMm.length + 1 };
}

const mostIn = (all: ReadonlyMap<number, number>, { from, to }: Window): number => {
  let most = 0;
  for (let i = from; i < to; i++) most = Math.max(most, all.get(i) ?? 0);
  return most;
};

/** The bays with as few places in one of them as are enough. */
function fewerIn(bays: readonly Bay[], index: number, shares: Shares): readonly Bay[] {
  let enough = bays;
  for (;;) {
    const stretches = at(enough, index).innerMm.length;
    if (stretches < 1) return enough;
    const tried = settled(replaced(enough, index, evenly(at(enough, index), stretches)), index, shares);
    if (!tried) return enough;
    enough = tried;
  }
}

const replaced = (bays: readonly Bay[], index: number, bay: Bay): readonly Bay[] =>
  bays.map((one, i) => (i === index ? bay : one));

/** The bays with the places of one of them shifted until they are enough there and beside it; undefined where they never are. */
function settled(bays: readonly Bay[], index: number, shares: Shares): readonly Bay[] | undefined {
  const judged = (innerMm: readonly number[]): Judged => {
    const next = replaced(bays, index, { ...at(bays, index), innerMm });
    const { from, to } = windowOf(next, index);
    const window = { from: Math.max(0, from - 1), to: Math.min(placesOf(next).length - 1, to + 1) };
    const all = shares(placesOf(next), window);
    const apart = isApart([at(bays, index).fromMm, ...innerMm, at(bays, index).toMm]);
    const asked = apart ? mostIn(all, window) : Number.POSITIVE_INFINITY;
    return { bays: next, innerMm, stretches: stretchesIn(all, { from, to }), asked };
  };
  let best = judged(at(bays, index).innerMm);
  for (let shift = 0; shift < SHIFTS && best.asked > 1; shift++) {
    const shifted = judged(evened(at(bays, index), best));
    if (shifted.asked >= best.asked) break;
    best = shifted;
  }
  if (best.asked > MOST_NUDGED) return undefined;
  for (const byMm of NUDGES_MM) best = nudged(best, at(bays, index), byMm, judged);
  return best.asked <= 1 ? best.bays : undefined;
}

/** The places beside the stretch that asks for most, nudged to and fro as long as that helps. */
function nudged(
  start: Judged,
  { fromMm, toMm }: Bay,
  byMm: number,
  judged: (innerMm: readonly number[]) => Judged,
): Judged {
  let best = start;
  for (let isBetter = true; isBetter && best.asked > 1; ) {
    isBetter = false;
    const worst = best.stretches.indexOf(Math.max(...best.stretches));
    for (const [place, sense] of [
      [worst - 1, 1],
      [worst, -1],
    ] as const) {
      const innerMm = best.innerMm.map((mm, i) => (i === place ? mm + sense * byMm : mm));
      if (place < 0 || place >= innerMm.length || !isApart([fromMm, ...innerMm, toMm])) continue;
      const tried = judged(innerMm);
      if (tried.asked >= best.asked - 1e-6) continue;
      best = tried;
      isBetter = true;
      break;
    }
  }
  return best;
}

interface Judged {
  readonly bays: readonly Bay[];
  readonly innerMm: readonly number[];
  /** What every stretch of the bay asks for. */
  readonly stretches: readonly number[];
  /** The most that is asked for in the bay and in the stretches beside it. */
  readonly asked: number;
}

const stretchesIn = (all: ReadonlyMap<number, number>, { from, to }: Window): readonly number[] =>
  Array.from({ length: to - from }, (_, i) => all.get(from + i) ?? 0);

const isApart = (placesMm: readonly number[]): boolean =>
  placesMm.every((mm, i) => i === 0 || mm - at(placesMm, i - 1) >= LEAST_PITCH_MM / 2);

/** The places of a bay with those stretches shorter that ask for more. */
function evened({ fromMm, toMm }: Bay, { innerMm, stretches }: Judged): readonly number[] {
  const borders = [fromMm, ...innerMm, toMm];
  const wanted = stretches.map(
    (asked, i) => (at(borders, i + 1) - at(borders, i)) * Math.max(asked, 0.05) ** -POWER,
  );
  const sum = wanted.reduce((total, mm) => total + mm, 0);
  let place = fromMm;
  return wanted.slice(0, -1).map((mm) => {
    place += (mm * (toMm - fromMm)) / sum;
    return Math.round(place);
  });
}
