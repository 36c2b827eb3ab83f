import { at } from "../foundation/index.ts";
import { EDGE_NUMBERS, evaluateEdge } from "./evaluate-edge.ts";
import type { SpaceEdge } from "./types.ts";

/** The places of one edge that a search looks at, with the edge evaluated there on both sides. */
export interface GridLines {
  readonly atMm: Float64Array;
  readonly before: Float64Array;
  readonly after: Float64Array;
  /** 1 at the ends of the edge and at its corners: a fan that starts from there sweeps one tangent only. */
  readonly isApex: Uint8Array;
  /** How many of those lie before each line. */
  readonly apexesBefore: Int32Array;
}

/** About `count` steps along an edge, even between its corners and jumps of curvature, which are lines themselves. */
export function gridLines(edge: SpaceEdge, count: number): GridLines {
  const apexes = [0, ...edge.cornersMm, edge.lengthMm];
  const atMm = edge.lengthMm > 0 ? linesOf(edge, count) : [0];
  const isApex = Uint8Array.from(atMm, (mm) => (apexes.includes(mm) ? 1 : 0));
  const apexesBefore = new Int32Array(atMm.length);
  for (let k = 1; k < atMm.length; k++) apexesBefore[k] = (apexesBefore[k - 1] ?? 0) + (isApex[k - 1] ?? 0);
  const lines: GridLines = {
    atMm: Float64Array.from(atMm),
    before: new Float64Array(atMm.length * EDGE_NUMBERS),
    after: new Float64Array(atMm.length * EDGE_NUMBERS),
    isApex,
    apexesBefore,
  };
  atMm.forEach((mm, index) => {
    evaluateEdge(edge, mm, index === 0 ? "after" : "before", lines.before, index * EDGE_NUMBERS);
    evaluateEdge(edge, mm, index === atMm.length - 1 ? "before" : "after", lines.after, index * EDGE_NUMBERS);
  });
  return lines;
}

function linesOf({ lengthMm, cornersMm, jumpsMm }: SpaceEdge, count: number): readonly number[] {
  const fixed = [0, ...cornersMm, ...jumpsMm, lengthMm].sort((a, b) => a - b);
  const between = fixed.slice(1).flatMap((end, k) => {
    const start = at(fixed, k);
    const steps = Math.max(1, Math.round((count * (end - start)) / lengthMm));
    return Array.from({ length: steps }, (_, j) => (j === 0 ? start : start + ((end - start) * j) / steps));
  });
  return [...between, lengthMm];
}
