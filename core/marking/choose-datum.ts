import { boundsOfLoops } from "../cutting/index.ts";
import { at, type FlatPoint } from "../foundation/index.ts";
import type { FlatLoop } from "../patterns/index.ts";

/** Straight and parallel to u within this, an edge serves as a datum, mm. */
const STRAIGHT_MM = 1e-6;
/** An edge shorter than this share of the strip is too short to lay a straightedge along. */
const LEAST_SHARE = 0.5;

/**
 * Where the datum starts: at the strip's least u, on its lowest straight edge parallel to u that is at least
 * half as long as the strip, else on the strip's least v.
 */
export function chooseDatum(loops: readonly FlatLoop[]): FlatPoint {
  const { leastUMm, mostUMm, leastVMm } = boundsOfLoops(loops);
  const straight = loops
    .flatMap(({ edges }) => edges)
    .filter(({ points: line }) => {
      const vMm = at(line, 0).v;
      const isParallel = line.every(({ v }) => Math.abs(v - vMm) < STRAIGHT_MM);
      return isParallel && Math.abs(at(line, -1).u - at(line, 0).u) >= LEAST_SHARE * (mostUMm - leastUMm);
    })
    .map((edge) => at(edge.points, 0).v)
    .sort((a, b) => a - b);
  return { u: leastUMm, v: straight[0] ?? leastVMm };
}
