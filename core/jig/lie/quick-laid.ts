import { at } from "../../foundation/index.ts";
import { num, type QuickLane, quickForced, stepFrom } from "./quick-lane.ts";

/** The supports of a lane by their length along it, and which of its ends hang free beyond them. */
export interface QuickSupports {
  readonly alongMm: readonly number[];
  readonly hangsFree: readonly [boolean, boolean];
}

interface Ends {
  readonly fromMm: number;
  readonly toMm: number;
}

export function endsOf({ alongMm }: QuickLane, supports: QuickSupports): Ends {
  const [free, own] = [supports.hangsFree, supports.alongMm];
  return {
    fromMm: free[0] ? num(alongMm, 0) : at(own, 0),
    toMm: free[1] ? num(alongMm, alongMm.length - 1) : at(own, -1),
  };
}

/** A lane on its supports: sag and bend together. */
export interface Main extends Ends {
  readonly supports: readonly number[];
  /** Steps of the lane's places that the supports lie in. */
  readonly steps: readonly number[];
  readonly moments: Float64Array;
  readonly heights: Float64Array;
  /** Mean weight of every span, N/mm of length, and of what hangs beyond both ends. */
  readonly weights: Float64Array;
  readonly beyond: readonly [number, number];
}

export function laid(quick: QuickLane, supports: readonly number[], { fromMm, toMm }: Ends): Main {
  const { stiffness } = quick.lane.foam;
  const spans = supports.length - 1;
  let step = 0;
  const steps = supports.map((mm) => {
    step = stepFrom(quick.alongMm, mm, step);
    return step;
  });
  const heights = Float64Array.from(supports, (mm, i) => quickForced(quick, mm, at(steps, i)));
  const weighed = Float64Array.from(supports, (mm, i) => weighedAt(quick, mm, at(steps, i)));
  const weights = new Float64Array(spans);
  for (let i = 0; i < spans; i++)
    weights[i] = (num(weighed, i + 1) - num(weighed, i)) / (at(supports, i + 1) - at(supports, i));
  const mean = (n: number, mm: number) => (mm > 0 ? n / mm : 0);
  const [before, after] = [at(supports, 0) - fromMm, toMm - at(supports, -1)];
  const lastStep = quick.alongMm.length - 2;
  const beyond = [
    mean(num(weighed, 0) - weighedAt(quick, fromMm, 0), before),
    mean(weighedAt(quick, toMm, lastStep) - num(weighed, spans), after),
  ] as const;
  const turns = new Float64Array(spans + 1);
  for (let i = 1; i < spans; i++) {
    const [left, right] = [at(supports, i) - at(supports, i - 1), at(supports, i + 1) - at(supports, i)];
    const grade =
      (num(heights, i + 1) - num(heights, i)) / right - (num(heights, i) - num(heights, i - 1)) / left;
    // An even load turns both ends of its span by q l³ / 24.
    turns[i] = 6 * stiffness * grade - (num(weights, i - 1) * left ** 3 + num(weights, i) * right ** 3) / 4;
  }
  const [start, end] = [(-beyond[0] * before ** 2) / 2, (-beyond[1] * after ** 2) / 2];
  const moments = momentsOver(supports, 0, spans, turns, [start, end]);
  return { fromMm, toMm, supports, steps, moments, heights, weights, beyond };
}

const weighedAt = ({ alongMm, weighedN }: QuickLane, mm: number, step: number): number => {
  const [a, n] = [num(alongMm, step), num(weighedN, step)];
  return n + ((num(weighedN, step + 1) - n) * (mm - a)) / (num(alongMm, step + 1) - a);
};

/** The moments over supports from one to another, by the three-moment equation (Thomas); `known` are those at both ends. */
export function momentsOver(
  supports: readonly number[],
  from: number,
  to: number,
  turns: Float64Array,
  known: readonly [number, number],
): Float64Array {
  const moments = new Float64Array(supports.length);
  const ratios = new Float64Array(supports.length);
  [moments[from], moments[to]] = known;
  for (let i = from + 1; i < to; i++) {
    const [left, right] = [at(supports, i) - at(supports, i - 1), at(supports, i + 1) - at(supports, i)];
    const below = i === from + 1 ? 0 : left;
    const pivot = 2 * (left + right) - below * num(ratios, i - 1);
    const before = i === from + 1 ? left * known[0] : left * num(moments, i - 1);
    const after = i === to - 1 ? right * known[1] : 0;
    ratios[i] = i === to - 1 ? 0 : right / pivot;
    moments[i] = (num(turns, i) - before - after) / pivot;
  }
  for (let i = to - 2; i > from; i--) moments[i] = num(moments, i) - num(ratios, i) * num(moments, i + 1);
  return moments;
}
