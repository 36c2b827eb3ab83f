import { at } from "../../foundation/index.ts";
import type { LieSettings } from "../../project/index.ts";
import { MOST_GIVE_MM, MOST_STRAIN_SHARE } from "./judge-line.ts";
import { PATCH_MM, SHORT_END_MM, SPREAD } from "./push-on-lane.ts";
import { num, type QuickLane, quickForced, stepFrom } from "./quick-lane.ts";

/** Places looked at in each stretch for the shape, and for a push. */
const LOOKS = 8;
/** A push is felt this many supports on. */
const FELT_SUPPORTS = 4;

/** The supports of a lane by their length along it, and which of its ends hang free beyond them. */
export interface QuickSupports {
  readonly alongMm: readonly number[];
  readonly hangsFree: readonly [boolean, boolean];
}

/**
 * The most that is asked for in stretches of a lane, as `layLane` and `judgeLine` tell it at their coarse look: stretch 0
 * lies before the first support, and one after each. Only those from `first` to before `last` are judged. Sag and bend
 * are laid at once, each span under its mean weight; the three-moment equation is as in `layBeam`.
 */
export function quickShares(
  quick: QuickLane,
  supports: QuickSupports,
  [first, last]: readonly [number, number],
  settings: LieSettings,
): Float64Array {
  const { foam } = quick.lane;
  const { alongMm } = supports;
  const spans = alongMm.length - 1;
  const ends = endsOf(quick, supports);
  const main = laid(quick, alongMm, ends);
  const shares = new Float64Array(spans + 2);
  for (let stretch = Math.max(0, first); stretch < Math.min(last, spans + 2); stretch++) {
    const isSpan = stretch > 0 && stretch <= spans;
    const offMm = isSpan
      ? offInSpan(quick, main, stretch - 1)
      : offBeyond(quick, main, stretch === 0 ? 0 : 1);
    const pushed = isSpan
      ? pushInSpan(quick, main, stretch - 1, settings.pushN)
      : pushBeyond(quick, main, stretch === 0 ? 0 : 1, settings.pushN);
    const strain = foam.thicknessMm / (2 * foam.stiffness * foam.strainLimit);
    const isStrainAsked = pushed.bend * strain < MOST_STRAIN_SHARE * 0.9;
    shares[stretch] = Math.max(
      offMm / settings.toleranceMm,
      pushed.giveMm / MOST_GIVE_MM,
      isStrainAsked ? (pushed.moment * strain) / MOST_STRAIN_SHARE : 0,
    );
  }
  return shares;
}

interface Ends {
  readonly fromMm: number;
  readonly toMm: number;
}

function endsOf({ alongMm }: QuickLane, supports: QuickSupports): Ends {
  const [free, own] = [supports.hangsFree, supports.alongMm];
  return {
    fromMm: free[0] ? num(alongMm, 0) : at(own, 0),
    toMm: free[1] ? num(alongMm, alongMm.length - 1) : at(own, -1),
  };
}

/** A lane on its supports: sag and bend together. */
interface Main extends Ends {
  readonly supports: readonly number[];
  /** Steps of the lane's places that the supports lie in. */
  readonly steps: readonly number[];
  readonly moments: Float64Array;
  readonly heights: Float64Array;
  /** Mean weight of every span, N/mm of length, and of what hangs beyond both ends. */
  readonly weights: Float64Array;
  readonly beyond: readonly [number, number];
}

function laid(quick: QuickLane, supports: readonly number[], { fromMm, toMm }: Ends): Main {
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
function momentsOver(
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

/** The most that the foam lies off its shape between two supports. */
function offInSpan(quick: QuickLane, main: Main, span: number): number {
  const { stiffness } = quick.lane.foam;
  const [fromMm, toMm] = [at(main.supports, span), at(main.supports, span + 1)];
  const [netFrom, netTo] = quick.lane.netMm;
  const lengthMm = toMm - fromMm;
  const [m0, m1, q] = [num(main.moments, span), num(main.moments, span + 1), num(main.weights, span)];
  const [h0, h1] = [num(main.heights, span), num(main.heights, span + 1)];
  let step = at(main.steps, span);
  let most = 0;
  for (let k = 1; k < LOOKS; k++) {
    const x = (lengthMm * k) / LOOKS;
    if (fromMm + x < netFrom || fromMm + x > netTo) continue;
    step = stepFrom(quick.alongMm, fromMm + x, step);
    const y = lengthMm - x;
    const straight = h0 + ((h1 - h0) * x) / lengthMm;
    const bent = (-x * y * (m0 * (y + lengthMm) + m1 * (x + lengthMm))) / (6 * lengthMm);
    const sagged = (-q * x * y * (lengthMm * lengthMm + x * y)) / 24;
    most = Math.max(
      most,
      Math.abs(straight + (bent + sagged) / stiffness - quickForced(quick, fromMm + x, step)),
    );
  }
  return most;
}

/** How the foam leaves its first support backward, or its last one forward. */
function slopeOut(main: Main, end: 0 | 1, stiffness: number): number {
  const span = end === 0 ? 0 : main.supports.length - 2;
  const lengthMm = at(main.supports, span + 1) - at(main.supports, span);
  const grade = (num(main.heights, span + 1) - num(main.heights, span)) / lengthMm;
  const [m0, m1, q] = [num(main.moments, span), num(main.moments, span + 1), num(main.weights, span)];
  const turn = (q * lengthMm ** 3) / 24;
  const start = grade + (-turn - (m0 * lengthMm) / 3 - (m1 * lengthMm) / 6) / stiffness;
  const stop = grade + (turn + (m0 * lengthMm) / 6 + (m1 * lengthMm) / 3) / stiffness;
  return end === 0 ? -start : stop;
}

/** The most that the foam lies off its shape beyond its first or last support. */
function offBeyond(quick: QuickLane, main: Main, end: 0 | 1): number {
  const { stiffness } = quick.lane.foam;
  const index = end === 0 ? 0 : main.supports.length - 1;
  const supportMm = at(main.supports, index);
  const a = end === 0 ? supportMm - main.fromMm : main.toMm - supportMm;
  if (!(a > 0)) return 0;
  const [slope, q] = [slopeOut(main, end, stiffness), main.beyond[end]];
  const [netFrom, netTo] = quick.lane.netMm;
  let step = at(main.steps, index);
  let most = 0;
  for (let k = 1; k <= LOOKS; k++) {
    const x = (a * k) / LOOKS;
    const mm = end === 0 ? supportMm - x : supportMm + x;
    if (mm < netFrom - 1e-6 || mm > netTo + 1e-6) continue;
    step = stepFrom(quick.alongMm, mm, step);
    const sagged = (-q * x * x * (6 * a * a - 4 * a * x + x * x)) / 24;
    const height = num(main.heights, index) + slope * x + sagged / stiffness;
    most = Math.max(most, Math.abs(height - quickForced(quick, mm, step)));
  }
  return most;
}

/** What a hand's push does: how far the foam gives, and its greatest moment with the bend's and of the bend alone. */
interface Pushed {
  readonly giveMm: number;
  readonly moment: number;
  readonly bend: number;
}

const NOT_PUSHED: Pushed = { giveMm: 0, moment: 0, bend: 0 };

/** A load on part of a span: what it presses on the first support, and how it turns both ends, times E I. */
function partLoad(lengthMm: number, a: number, b: number, q: number) {
  const startN = (q * (b - a) * (lengthMm - (a + b) / 2)) / lengthMm;
  const fourth = (q * ((lengthMm - a) ** 4 - (lengthMm - b) ** 4)) / 24;
  const third = (q * ((lengthMm - a) ** 3 - (lengthMm - b) ** 3)) / 6;
  return {
    startN,
    turnAtStart: (-startN * lengthMm * lengthMm) / 6 + fourth / lengthMm,
    turnAtEnd: (startN * lengthMm * lengthMm) / 3 + fourth / lengthMm - third,
  };
}

const patchOn = (widthMm: number, spanMm: number, pushN: number): number =>
  pushN / (PATCH_MM * Math.min(Math.max(widthMm, PATCH_MM), PATCH_MM + SPREAD * spanMm));

/** The moments that a patch brings over the supports that feel it. */
function pushedMoments(main: Main, near: number, fromMm: number, toMm: number, q: number): Float64Array {
  const { supports } = main;
  const from = Math.max(0, near - FELT_SUPPORTS);
  const to = Math.min(supports.length - 1, near + FELT_SUPPORTS + 1);
  const turns = new Float64Array(supports.length);
  for (let span = Math.max(from, near - 1); span < Math.min(to, near + 2); span++) {
    const [start, end] = [at(supports, span), at(supports, span + 1)];
    const [a, b] = [Math.max(fromMm, start) - start, Math.min(toMm, end) - start];
    if (b <= a) continue;
    const { turnAtStart, turnAtEnd } = partLoad(end - start, a, b, q);
    turns[span] = num(turns, span) + 6 * turnAtStart;
    turns[span + 1] = num(turns, span + 1) - 6 * turnAtEnd;
  }
  // What of the patch lies beyond the first or last support bends over it.
  const out = (end: 0 | 1): number => {
    const support = end === 0 ? at(supports, 0) : at(supports, -1);
    const [p, r] =
      end === 0
        ? [support - toMm, support - Math.max(fromMm, main.fromMm)]
        : [fromMm - support, Math.min(toMm, main.toMm) - support];
    return r > 0 ? (-q / 2) * (r * r - Math.max(0, p) ** 2) : 0;
  };
  return momentsOver(supports, from, to, turns, [
    from === 0 ? out(0) : 0,
    to === supports.length - 1 ? out(1) : 0,
  ]);
}

function pushInSpan(quick: QuickLane, main: Main, span: number, pushN: number): Pushed {
  const { foam, widthMm, netMm } = quick.lane;
  const [fromMm, toMm] = [at(main.supports, span), at(main.supports, span + 1)];
  const lengthMm = toMm - fromMm;
  const middleMm = (fromMm + toMm) / 2;
  if (middleMm < netMm[0] || middleMm > netMm[1]) return NOT_PUSHED;
  const q = patchOn(widthMm, lengthMm, pushN);
  const moments = pushedMoments(main, span, middleMm - PATCH_MM / 2, middleMm + PATCH_MM / 2, q);
  const [a, b] = [Math.max(0, (lengthMm - PATCH_MM) / 2), Math.min(lengthMm, (lengthMm + PATCH_MM) / 2)];
  const { startN, turnAtStart } = partLoad(lengthMm, a, b, q);
  const [m0, m1] = [num(moments, span), num(moments, span + 1)];
  const rise = (m1 - m0) / lengthMm;
  const slope = turnAtStart - (m0 * lengthMm) / 3 - (m1 * lengthMm) / 6;
  const bends = bendIn(main, span);
  let [giveMm, moment, bend] = [0, 0, 0];
  for (let i = 0; i <= LOOKS; i++) {
    const x = (lengthMm * i) / LOOKS;
    const [pa, pb] = [Math.max(0, x - a), Math.max(0, x - b)];
    const height =
      slope * x + ((startN + rise) * x ** 3) / 6 + (m0 * x * x) / 2 - (q * (pa ** 4 - pb ** 4)) / 24;
    const own = bends(x);
    giveMm = Math.max(giveMm, -height / foam.stiffness);
    moment = Math.max(moment, Math.abs(own + m0 + (startN + rise) * x - (q * (pa * pa - pb * pb)) / 2));
    bend = Math.max(bend, Math.abs(own));
  }
  return { giveMm, moment, bend };
}

/** The moment of sag and bend along a span. */
function bendIn(main: Main, span: number): (x: number) => number {
  const lengthMm = at(main.supports, span + 1) - at(main.supports, span);
  const [m0, m1, q] = [num(main.moments, span), num(main.moments, span + 1), num(main.weights, span)];
  return (x) => m0 + ((m1 - m0) * x) / lengthMm + (q * x * (lengthMm - x)) / 2;
}

/** A push onto an end that reaches far beyond its support. */
function pushBeyond(quick: QuickLane, main: Main, end: 0 | 1, pushN: number): Pushed {
  const { foam, widthMm, netMm } = quick.lane;
  const supportMm = end === 0 ? at(main.supports, 0) : at(main.supports, -1);
  const outMm = end === 0 ? supportMm - main.fromMm : main.toMm - supportMm;
  const middleMm = end === 0 ? main.fromMm + PATCH_MM / 2 : main.toMm - PATCH_MM / 2;
  if (!(outMm > SHORT_END_MM) || middleMm < netMm[0] || middleMm > netMm[1]) return NOT_PUSHED;
  const q = patchOn(widthMm, 2 * outMm, pushN);
  const span = end === 0 ? 0 : main.supports.length - 2;
  const moments = pushedMoments(main, span, middleMm - PATCH_MM / 2, middleMm + PATCH_MM / 2, q);
  const lengthMm = at(main.supports, span + 1) - at(main.supports, span);
  const [m0, m1] = [num(moments, span), num(moments, span + 1)];
  // The slope in which the pushed foam leaves its support, and the patch told outward from it.
  const inside = insidePatch(main, span, middleMm, q);
  const start = (inside.turnAtStart - (m0 * lengthMm) / 3 - (m1 * lengthMm) / 6) / foam.stiffness;
  const stop = (inside.turnAtEnd + (m0 * lengthMm) / 6 + (m1 * lengthMm) / 3) / foam.stiffness;
  const slope = end === 0 ? -start : stop;
  const [near, far] = [Math.max(0, outMm - PATCH_MM), outMm];
  const weightN = main.beyond[end];
  let [giveMm, moment, bend] = [0, 0, 0];
  for (let i = 0; i <= LOOKS; i++) {
    const x = (outMm * i) / LOOKS;
    const [pf, pn] = [Math.max(0, far - x), Math.max(0, near - x)];
    const bent = (place: number, rest: number) => (place ** 3 * x) / 3 - (place ** 4 - rest ** 4) / 12;
    const height = slope * x - ((q / 2) * (bent(far, pf) - bent(near, pn))) / foam.stiffness;
    const own = (-weightN / 2) * (outMm - x) ** 2;
    giveMm = Math.max(giveMm, -height);
    moment = Math.max(moment, Math.abs(own - (q / 2) * (pf * pf - pn * pn)));
    bend = Math.max(bend, Math.abs(own));
  }
  return { giveMm, moment, bend };
}

/** How what of a patch lies inside the end span turns its ends. */
function insidePatch(main: Main, span: number, middleMm: number, q: number) {
  const [start, end] = [at(main.supports, span), at(main.supports, span + 1)];
  const a = Math.max(middleMm - PATCH_MM / 2, start) - start;
  const b = Math.min(middleMm + PATCH_MM / 2, end) - start;
  return b > a ? partLoad(end - start, a, b, q) : { turnAtStart: 0, turnAtEnd: 0 };
}
