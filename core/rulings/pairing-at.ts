import { at } from "../foundation/index.ts";
import type { PairedEdges, PairingNode } from "./types.ts";

/** The pairing at one s: which interval of rulings, both lengths, and how fast the first one grows with s. */
export interface Pairing {
  readonly firstMm: number;
  readonly secondMm: number;
  /** d firstMm / d s; that of the second is 2 less this. */
  readonly firstRate: number;
}

/** The interval of rulings that s lies in: the first or last beyond the ends; on a ruling the one after it. */
export function intervalAt(surface: PairedEdges, sMm: number): number {
  const { rulings } = surface;
  let low = 0;
  let high = rulings.length - 2;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (at(rulings, middle).sMm <= sMm) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** Lengths on both edges at s inside an interval: the Hermite cubic of its two rulings; they add up to 2 s. */
export function pairingAt(surface: PairedEdges, interval: number, sMm: number): Pairing {
  const [from, to] = [at(surface.rulings, interval), at(surface.rulings, interval + 1)];
  const span = to.sMm - from.sMm;
  const x = Math.min(1, Math.max(0, (sMm - from.sMm) / span));
  const { value, slope } = hermite(from, to, span, x);
  const firstMm = Math.min(to.firstMm, Math.max(from.firstMm, value));
  const secondMm = Math.min(to.secondMm, Math.max(from.secondMm, 2 * (from.sMm + x * span) - value));
  return { firstMm, secondMm, firstRate: slope };
}

function hermite(from: PairingNode, to: PairingNode, span: number, x: number) {
  const rise = to.firstMm - from.firstMm;
  const [m0, m1] = [from.slopeAfter * span, to.slopeBefore * span];
  const [c2, c3] = [3 * rise - 2 * m0 - m1, m0 + m1 - 2 * rise];
  return {
    value: from.firstMm + x * (m0 + x * (c2 + x * c3)),
    slope: (m0 + x * (2 * c2 + 3 * x * c3)) / span,
  };
}
