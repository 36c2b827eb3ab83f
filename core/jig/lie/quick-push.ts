import { at } from "../../foundation/index.ts";
import { PATCH_MM, SHORT_END_MM, SPREAD } from "./push-on-lane.ts";
import { type Main, momentsOver } from "./quick-laid.ts";
import { num, type QuickLane } from "./quick-lane.ts";
import { LOOKS } from "./quick-off-shape.ts";

/** A push is felt this many supports on. */
const FELT_SUPPORTS = 4;

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

export function pushInSpan(quick: QuickLane, main: Main, span: number, pushN: number): Pushed {
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
export function pushBeyond(quick: QuickLane, main: Main, end: 0 | 1, pushN: number): Pushed {
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
