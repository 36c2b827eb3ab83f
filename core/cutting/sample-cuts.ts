import { at } from "../foundation/index.ts";
import type { FlatLoop } from "../patterns/index.ts";
import type { CutAxis } from "./divide-loops.ts";

/** What an island looks like along one axis, at chosen places. */
export interface CutSamples {
  readonly axis: CutAxis;
  /** Ascending; the first and the last are the ends of the island. */
  readonly placesMm: readonly number[];
  /** Length of foam that a cut at each place goes through. */
  readonly insideMm: readonly number[];
  /** Least and greatest other coordinate of the foam between each place and the next. */
  readonly leastMm: readonly number[];
  readonly mostMm: readonly number[];
}

/** Measures an island at all places in one walk along its boundary. `placesMm` ascending, ends included. */
export function sampleCuts(
  loops: readonly FlatLoop[],
  axis: CutAxis,
  placesMm: readonly number[],
): CutSamples {
  const other = axis === "u" ? "v" : "u";
  const bands = placesMm.length - 1;
  const leastMm = new Array<number>(bands).fill(Number.POSITIVE_INFINITY);
  const mostMm = new Array<number>(bands).fill(Number.NEGATIVE_INFINITY);
  const crossingsMm: number[][] = placesMm.map(() => []);
  const see = (band: number, valueMm: number) => {
    if (valueMm < (leastMm[band] ?? 0)) leastMm[band] = valueMm;
    if (valueMm > (mostMm[band] ?? 0)) mostMm[band] = valueMm;
  };
  for (const loop of loops) {
    for (const { points } of loop.edges) {
      let from = at(points, 0);
      let fromBand = bandOf(from[axis], placesMm);
      for (let i = 1; i < points.length; i++) {
        const to = at(points, i);
        const toBand = bandOf(to[axis], placesMm);
        see(toBand, to[other]);
        for (let place = Math.min(fromBand, toBand) + 1; place <= Math.max(fromBand, toBand); place++) {
          const share = (at(placesMm, place) - from[axis]) / (to[axis] - from[axis]);
          const valueMm = from[other] + share * (to[other] - from[other]);
          at(crossingsMm, place).push(valueMm);
          see(place - 1, valueMm);
          see(place, valueMm);
        }
        from = to;
        fromBand = toBand;
      }
    }
  }
  return { axis, placesMm, insideMm: crossingsMm.map(insideLengthMm), leastMm, mostMm };
}

/** The band that a value lies in: places[band] ≤ value < places[band + 1], the ends counted in. */
function bandOf(valueMm: number, placesMm: readonly number[]): number {
  let low = 0;
  let high = placesMm.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (at(placesMm, middle) <= valueMm) low = middle;
    else high = middle;
  }
  return low;
}

function insideLengthMm(crossingsMm: number[]): number {
  crossingsMm.sort((a, b) => a - b);
  let lengthMm = 0;
  for (let i = 0; i + 1 < crossingsMm.length; i += 2) {
    lengthMm += at(crossingsMm, i + 1) - at(crossingsMm, i);
  }
  return lengthMm;
}
