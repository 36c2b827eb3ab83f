import { at, type FlatPoint } from "../../../core/foundation/index.ts";
import type { Rib } from "../../../core/jig/index.ts";

/** Least and greatest height of wood, or least and greatest place. */
export type Span = readonly [number, number];

/** The heights at which a vertical line through some loops is inside them, even-odd, told apart from how they were made. */
export function spansAt(loops: readonly (readonly FlatPoint[])[], u: number): Span[] {
  const crossings = loops
    .flatMap((loop) =>
      loop.flatMap((to, i) => {
        const from = at(loop, i - 1);
        if (from.u > u === to.u > u) return [];
        return [from.v + ((u - from.u) / (to.u - from.u)) * (to.v - from.v)];
      }),
    )
    .sort((a, b) => a - b);
  return crossings.flatMap((v, i) => (i % 2 === 0 ? [[v, at(crossings, i + 1)] as const] : []));
}

/** Where there is wood of a rib over a place along it. */
export const woodAt = ({ outlineMm, holesMm }: Rib, u: number): Span[] => spansAt([outlineMm, ...holesMm], u);

/** The board of a rib in plan, by which face stands on its station plane. */
export function boardOf({ atMm, thicknessMm, stationFace }: Rib): Span {
  const isAhead = stationFace === "front" || stationFace === "left";
  return isAhead ? [atMm, atMm + thicknessMm] : [atMm - thicknessMm, atMm];
}

/** How deep two boards of different direction lie in each other, with one of them lifted; looked at over all places they share. */
export function deepestCollision(across: Rib, along: Rib, liftMm: number, steps = 12): number {
  const [xs, ys] = [boardOf(across), boardOf(along)];
  let deepest = 0;
  const inside = ([from, to]: Span, i: number) => from + ((to - from) * (i + 0.5)) / steps;
  for (let i = 0; i < steps; i++) {
    const ofAcross = woodAt(across, inside(ys, i));
    for (let k = 0; k < steps; k++) {
      for (const [low, high] of woodAt(along, inside(xs, k))) {
        for (const [from, to] of ofAcross) {
          deepest = Math.max(deepest, Math.min(to + liftMm, high) - Math.max(from + liftMm, low));
        }
      }
    }
  }
  return deepest;
}
