import { at } from "../foundation/index.ts";
import type { EdgePair, Knot } from "./knots.ts";
import type { FanApex, PairingNode } from "./types.ts";

/** Knots nearer together than this, mm of sweep, are one ruling. */
const ONE_RULING_MM = 1e-6;
/** Places that a slope is taken from. */
const SLOPE_POINTS = 5;

/**
 * Knots as rulings of the pairing: fans get rulings in between, stretches of no length vanish, and each ruling gets the
 * slope of a smooth monotone curve through its stretch.
 */
export function pairingNodes(pair: EdgePair, knots: readonly Knot[], count: number): readonly PairingNode[] {
  const places = withFanRulings(pair, knots, count);
  const kept = withoutDoubles(places);
  return withSlopes(kept);
}

interface Place {
  readonly sMm: number;
  readonly firstMm: number;
  readonly fanAfter: FanApex;
  /** Whether the pairing may turn here. */
  readonly isBreak: boolean;
}

function withFanRulings(pair: EdgePair, knots: readonly Knot[], count: number): readonly Place[] {
  return knots.flatMap((knot, index): Place[] => {
    const { firstMm, secondMm, fanAfter } = knot;
    const sMm = (firstMm + secondMm) / 2;
    const place = { sMm, firstMm, fanAfter, isBreak: knot.hold !== "free" };
    const next = knots[index + 1];
    if (fanAfter === "none" || next === undefined) return [place];
    const span = (next.firstMm + next.secondMm) / 2 - sMm;
    const parts = Math.max(1, Math.ceil((count * span) / pair.sweptMm));
    const between = Array.from({ length: parts - 1 }, (_, k): Place => {
      const x = (k + 1) / parts;
      return {
        sMm: sMm + x * span,
        firstMm: firstMm + x * (next.firstMm - firstMm),
        fanAfter,
        isBreak: false,
      };
    });
    return [place, ...between];
  });
}

function withoutDoubles(places: readonly Place[]): readonly Place[] {
  const kept: Place[] = [];
  for (const place of places) {
    const last = kept[kept.length - 1];
    if (last === undefined || place.sMm - last.sMm > ONE_RULING_MM) kept.push(place);
    else
      kept[kept.length - 1] = { ...last, fanAfter: place.fanAfter, isBreak: last.isBreak || place.isBreak };
  }
  const end = at(places, -1);
  kept[kept.length - 1] = { ...at(kept, -1), sMm: end.sMm, firstMm: end.firstMm };
  return kept;
}

function withSlopes(places: readonly Place[]): readonly PairingNode[] {
  const breaks = places.flatMap((place, k) =>
    k === 0 || k === places.length - 1 || place.isBreak || at(places, k - 1).fanAfter !== place.fanAfter
      ? [k]
      : [],
  );
  const before = places.map(() => 0);
  const after = places.map(() => 0);
  breaks.slice(1).forEach((end, k) => {
    const start = at(breaks, k);
    const stretch = places.slice(start, end + 1);
    const slopes = slopesOf(stretch, at(places, start).fanAfter);
    slopes.forEach((slope, index) => {
      if (index > 0) before[start + index] = keptMonotone(at(stretch, index - 1), at(stretch, index), slope);
      if (index + 1 < stretch.length)
        after[start + index] = keptMonotone(at(stretch, index), at(stretch, index + 1), slope);
    });
  });
  return places.map(({ sMm, firstMm, fanAfter }, k) => ({
    sMm,
    firstMm,
    secondMm: 2 * sMm - firstMm,
    slopeBefore: k === 0 ? at(after, 0) : at(before, k),
    slopeAfter: k === places.length - 1 ? at(before, k) : at(after, k),
    fanAfter,
  }));
}

/** d firstMm / d s on one smooth stretch: of the polynomial through five neighbours. */
function slopesOf(stretch: readonly Place[], fan: FanApex): readonly number[] {
  if (fan !== "none") return stretch.map(() => (fan === "first" ? 0 : 2));
  const points = Math.min(SLOPE_POINTS, stretch.length);
  return stretch.map((_, k) => {
    const start = Math.min(stretch.length - points, Math.max(0, k - (points >> 1)));
    return slopeThrough(stretch.slice(start, start + points), k - start);
  });
}

/** Slope at one of several places of the polynomial through all of them. */
function slopeThrough(places: readonly Place[], index: number): number {
  const here = at(places, index).sMm;
  let slope = 0;
  places.forEach(({ sMm, firstMm }, j) => {
    const rise = firstMm - at(places, index).firstMm;
    if (j === index || rise === 0) return;
    let weight = 1 / (sMm - here);
    places.forEach(({ sMm: other }, m) => {
      if (m !== index && m !== j) weight *= (here - other) / (sMm - other);
    });
    slope += rise * weight;
  });
  return slope;
}

/**
 * A slope that keeps the cubic between two places monotone for both edges: at most thrice the chord's (Fritsch & Carlson
 * 1980). Where a limit binds on one side only, the pairing turns a little at that ruling.
 */
function keptMonotone(from: Place, to: Place, slope: number): number {
  const chord = (to.firstMm - from.firstMm) / (to.sMm - from.sMm);
  const high = Math.min(2, 3 * chord);
  const low = Math.max(0, 3 * chord - 4);
  return Math.min(high, Math.max(low, slope));
}
