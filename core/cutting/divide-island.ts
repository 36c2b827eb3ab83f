import type { BendZone } from "../bending/index.ts";
import { at } from "../foundation/index.ts";
import { type CutCost, chooseCuts, type StockBox } from "./choose-cuts.ts";
import { cutPlaces } from "./cut-places.ts";
import { type CutAxis, divideLoops } from "./divide-loops.ts";
import type { Island } from "./group-islands.ts";
import { boundsOfLoops } from "./loop-measures.ts";
import { type CutSamples, sampleCuts } from "./sample-cuts.ts";

export interface DivideSettings {
  readonly boxes: readonly StockBox[];
  readonly zones: readonly BendZone[];
  /** The v of the centre line, where cuts across the rulings are wanted first; absent where there is none. */
  readonly centreVMm?: number;
  readonly staggerMm: number;
}

type Lean = "even" | "start" | "end";

/** A way to divide an island, and what it costs in the order in which costs count. */
interface Plan {
  readonly pieces: readonly Island[];
  readonly costs: readonly number[];
}

/**
 * Divides an island into pieces that fit the stock: rows by cuts at constant v and columns in each row by cuts
 * at constant u, or the other way round where that takes fewer strips. Seams of neighbouring rows are kept
 * apart by the stagger where there is room. Undefined where the stock is too small for any division.
 */
export function divideIsland(island: Island, settings: DivideSettings): readonly Island[] | undefined {
  const plans: Plan[] = [];
  for (const firstAxis of ["v", "u"] as const) {
    for (const lean of ["even", "start", "end"] as const) {
      const plan = planDivision(island, firstAxis, lean, settings);
      if (plan !== undefined) plans.push(plan);
      if (plan === undefined || at(plan.costs, CLASHES) === 0) break;
    }
  }
  return plans.sort((a, b) => compareCosts(a.costs, b.costs))[0]?.pieces;
}

/** Where the clashes stand among the costs: strips, bends cut into, clashes, seam length. */
const CLASHES = 2;

function compareCosts(a: readonly number[], b: readonly number[]): number {
  const differs = a.findIndex((cost, i) => cost !== b[i]);
  return differs < 0 ? 0 : at(a, differs) - at(b, differs);
}

function planDivision(
  island: Island,
  firstAxis: CutAxis,
  lean: Lean,
  settings: DivideSettings,
): Plan | undefined {
  const costs = [0, 0, 0, 0];
  const firstCost = (placeMm: number) => ruleCost(firstAxis, placeMm, [], settings);
  const first = chooseFor(island, firstAxis, [], {
    settings,
    round: "first",
    lean: "even",
    costOf: firstCost,
  });
  if (first === undefined) return undefined;
  const secondAxis = firstAxis === "u" ? "v" : "u";
  const bands = divideAll([island], firstAxis, first.cutsMm);
  addCosts(costs, first, firstCost);
  const pieces: Island[] = [];
  let neighbours: number[] = [];
  for (const [order, band] of bands.entries()) {
    const ownCuts: number[] = [];
    for (const part of band) {
      const secondCost = (placeMm: number) => ruleCost(secondAxis, placeMm, neighbours, settings);
      const second = chooseFor(part, secondAxis, neighbours, {
        settings,
        round: "final",
        lean: order === 0 ? lean : "even",
        costOf: secondCost,
      });
      if (second === undefined) return undefined;
      addCosts(costs, second, secondCost);
      ownCuts.push(...second.cutsMm);
      pieces.push(...divideAll([part], secondAxis, second.cutsMm).flat());
    }
    neighbours = ownCuts;
  }
  costs[0] = pieces.length;
  return { pieces, costs };
}

/** What the trade says against a cut: columns keep out of bends, rows go for the centre line first. */
function ruleCost(
  axis: CutAxis,
  placeMm: number,
  neighboursMm: readonly number[],
  { zones, centreVMm, staggerMm }: DivideSettings,
): CutCost {
  const isNear = neighboursMm.some((seamMm) => Math.abs(seamMm - placeMm) < staggerMm - 1e-6);
  if (axis === "v") {
    const offCentre = centreVMm !== undefined && Math.abs(placeMm - centreVMm) > 1e-6;
    return { strain: 0, clashes: (isNear ? 1 : 0) + (offCentre ? 1 : 0) };
  }
  const zone = zones.find(({ fromUMm, toUMm }) => placeMm > fromUMm && placeMm < toUMm);
  return { strain: zone?.strain ?? 0, clashes: isNear ? 1 : 0 };
}

interface Choice {
  readonly samples: CutSamples;
  readonly cutsMm: readonly number[];
}

interface ChooseFor {
  readonly settings: DivideSettings;
  readonly round: "first" | "final";
  readonly lean: Lean;
  readonly costOf: (placeMm: number) => CutCost;
}

function chooseFor(
  island: Island,
  axis: CutAxis,
  neighboursMm: readonly number[],
  { settings, round, lean, costOf }: ChooseFor,
): Choice | undefined {
  const bounds = boundsOfLoops(island);
  const [fromMm, toMm] = axis === "u" ? [bounds.leastUMm, bounds.mostUMm] : [bounds.leastVMm, bounds.mostVMm];
  const limitsMm = [...new Set(settings.boxes.map((box) => box[`${axis}Mm`]))];
  const staggered = neighboursMm.flatMap((seamMm) => [
    seamMm,
    seamMm - settings.staggerMm,
    seamMm + settings.staggerMm,
  ]);
  const centre = axis === "v" && settings.centreVMm !== undefined ? [settings.centreVMm] : [];
  const wishesMm = [...staggered, ...centre];
  const zones = axis === "u" ? settings.zones : [];
  const placesMm = cutPlaces(island, axis, { fromMm, toMm, limitsMm, wishesMm, zones });
  const samples = sampleCuts(island, axis, placesMm);
  const cutsMm = chooseCuts(samples, { boxes: settings.boxes, round, costOf, lean });
  return cutsMm && { samples, cutsMm };
}

function addCosts(costs: number[], { samples, cutsMm }: Choice, costOf: (placeMm: number) => CutCost): void {
  for (const cutMm of cutsMm) {
    const { strain, clashes } = costOf(cutMm);
    costs[1] = at(costs, 1) + strain;
    costs[CLASHES] = at(costs, CLASHES) + clashes;
    costs[3] = at(costs, 3) + Math.round(at(samples.insideMm, samples.placesMm.indexOf(cutMm)));
  }
}

/** Islands cut at several places: one band for each interval, each with its islands. */
function divideAll(islands: readonly Island[], axis: CutAxis, cutsMm: readonly number[]): Island[][] {
  const bands: Island[][] = [];
  let rest: readonly Island[] = islands;
  for (const cutMm of cutsMm) {
    const divisions = rest.map((island) => divideLoops(island, axis, cutMm));
    bands.push(divisions.flatMap(({ below }) => below));
    rest = divisions.flatMap(({ above }) => above);
  }
  return [...bands, [...rest]];
}
