import { at } from "../../foundation/index.ts";
import type { Main } from "./quick-laid.ts";
import { num, type QuickLane, quickForced, stepFrom } from "./quick-lane.ts";

/** Places looked at in each stretch for the shape, and for a push. */
export const LOOKS = 8;

/** The most that the foam lies off its shape between two supports. */
export function offInSpan(quick: QuickLane, main: Main, span: number): number {
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
export function offBeyond(quick: QuickLane, main: Main, end: 0 | 1): number {
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
