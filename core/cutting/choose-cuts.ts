import { at } from "../foundation/index.ts";
import type { CutSamples } from "./sample-cuts.ts";

/** A stock sheet in one of its two positions: the longest piece it gives along u and along v, mm. */
export interface StockBox {
  readonly uMm: number;
  readonly vMm: number;
}

/** What a cut at one place costs besides its length. */
export interface CutCost {
  /** Outer-fibre strain of the bend that it cuts into; 0 in a flat stretch and across the rulings. */
  readonly strain: number;
  /** How many wishes it goes against: too near to a neighbour's seam, off the centre line. */
  readonly clashes: number;
}

export interface ChoiceSettings {
  readonly boxes: readonly StockBox[];
  /** "final": every band must fit the stock; "first": bands will be divided once more the other way. */
  readonly round: "first" | "final";
  readonly costOf: (placeMm: number) => CutCost;
  /** Where equal plans should put their seams: spread evenly, or toward one end (to leave room for a neighbour's). */
  readonly lean: "even" | "start" | "end";
}

/** A band narrower than this is awkward to handle and to glue, mm (common practice). */
const LEAST_BAND_MM = 40;

// One number orders the plans: fewest strips, then no bend cut into, then no clash, then least seam, then spread.
const STRIP = 1e12;
const NARROW = 1e10;
const STRAIN_STEP = 1e6;
const STRAIN_STEPS_PER_UNIT = 1e4;
const CLASH = 1e5;
const LEAN = 1e4;

/**
 * The best places to cut, by a shortest path over the sampled places: fewest strips first, then the least
 * strain in what is cut into, the fewest clashes, the least seam length (to the millimetre), and last even spacing.
 * Undefined where no choice fits the stock.
 */
export function chooseCuts(samples: CutSamples, settings: ChoiceSettings): number[] | undefined {
  const { placesMm } = samples;
  const bandCost = bandCosts(samples, settings);
  const last = placesMm.length - 1;
  const best: { cost: number; before: number }[] = [{ cost: 0, before: -1 }];
  for (let to = 1; to <= last; to++) {
    let choice = { cost: Number.POSITIVE_INFINITY, before: -1 };
    let leastMm = Number.POSITIVE_INFINITY;
    let mostMm = Number.NEGATIVE_INFINITY;
    for (let from = to - 1; from >= 0; from--) {
      leastMm = Math.min(leastMm, at(samples.leastMm, from));
      mostMm = Math.max(mostMm, at(samples.mostMm, from));
      const band = bandCost(from, to, mostMm - leastMm);
      // A wider band fits no better.
      if (band === Number.POSITIVE_INFINITY) break;
      const cost = at(best, from).cost + band;
      if (cost < choice.cost) choice = { cost, before: from };
    }
    const cut = to === last ? 0 : cutCost(samples, to, settings);
    best.push({ cost: choice.cost + cut, before: choice.before });
  }
  if (!Number.isFinite(at(best, last).cost)) return undefined;
  const cuts: number[] = [];
  for (let i = at(best, last).before; i > 0; i = at(best, i).before) cuts.unshift(at(placesMm, i));
  return cuts;
}

/** A stock box as a band sees it: how much it gives across the cuts, and along them. */
interface BandBox {
  readonly widthMm: number;
  readonly lengthMm: number;
}

const boxAlong = (axis: CutSamples["axis"], { uMm, vMm }: StockBox): BandBox =>
  axis === "u" ? { widthMm: uMm, lengthMm: vMm } : { widthMm: vMm, lengthMm: uMm };

/** What the band between two places costs that reaches over `acrossMm`; infinite where no sheet takes it. */
function bandCosts(
  { axis, placesMm }: CutSamples,
  settings: ChoiceSettings,
): (from: number, to: number, acrossMm: number) => number {
  const boxes = settings.boxes.map((box) => boxAlong(axis, box));
  const spanMm = at(placesMm, -1) - at(placesMm, 0);
  return (from, to, acrossMm) => {
    const widthMm = at(placesMm, to) - at(placesMm, from);
    const pieces = leastPieces(widthMm, acrossMm, boxes);
    if (pieces === undefined || (settings.round === "final" && pieces > 1)) return Number.POSITIVE_INFINITY;
    const narrow = widthMm < LEAST_BAND_MM && widthMm < spanMm ? NARROW : 0;
    const share = widthMm / spanMm;
    return pieces * STRIP + narrow + (pieces - 1) * Math.round(widthMm) + share * share;
  };
}

/** How many pieces a band needs when it is cut the other way; undefined where no sheet takes its width. */
function leastPieces(widthMm: number, acrossMm: number, boxes: readonly BandBox[]): number | undefined {
  let longestMm = 0;
  for (const box of boxes) {
    if (box.widthMm >= widthMm - 1e-9) longestMm = Math.max(longestMm, box.lengthMm);
  }
  return longestMm > 0 ? Math.max(1, Math.ceil((acrossMm - 1e-9) / longestMm)) : undefined;
}

function cutCost({ placesMm, insideMm }: CutSamples, place: number, settings: ChoiceSettings): number {
  const placeMm = at(placesMm, place);
  const { strain, clashes } = settings.costOf(placeMm);
  const share = (placeMm - at(placesMm, 0)) / (at(placesMm, -1) - at(placesMm, 0));
  const lean = settings.lean === "even" ? 0 : settings.lean === "start" ? share : 1 - share;
  return (
    Math.round(strain * STRAIN_STEPS_PER_UNIT) * STRAIN_STEP +
    clashes * CLASH +
    Math.round(at(insideMm, place)) +
    lean * LEAN
  );
}
