import type { FlatPoint } from "../../core/foundation/index.ts";
import { type Bounds, boundsOf, pathOf, type Scale, type Spot } from "./scale.ts";

/** A closed flat loop of edges end to end, of foam or of metal. */
export interface LoopOfPoints {
  readonly edges: readonly { readonly points: readonly FlatPoint[] }[];
}

/** A flat point as it is drawn: u (rearward) to the right, v (to the car's right) upward. */
export const flatSpot = ({ u, v }: FlatPoint): Spot => [u, v];

/** The points of a loop, edge after edge, each corner once. */
export const loopPoints = (loop: LoopOfPoints): readonly FlatPoint[] =>
  loop.edges.flatMap((edge) => edge.points.slice(0, -1));

const knownBounds = new WeakMap<readonly LoopOfPoints[], Bounds | undefined>();

/** The box around flat loops; undefined for none. Found once for each list of loops. */
export function loopsBounds(loops: readonly LoopOfPoints[]): Bounds | undefined {
  if (!knownBounds.has(loops)) knownBounds.set(loops, boundsOf(loops.flatMap(loopPoints).map(flatSpot)));
  return knownBounds.get(loops);
}

/** The closed path of all loops: filled by the even-odd rule, holes stay open. */
export const loopsPath = (loops: readonly LoopOfPoints[], scale: Scale): string =>
  loops.map((loop) => pathOf(loopPoints(loop).map(flatSpot), scale, "closed")).join("");

/** The stretches of v over which flat loops cover a place along u, by the even-odd rule. */
export function chordsAt(
  loops: readonly LoopOfPoints[],
  uMm: number,
): readonly (readonly [from: number, to: number])[] {
  const crossings = loops
    .flatMap((loop) => {
      const points = loopPoints(loop);
      return points.flatMap((from, index) => {
        const to = points[index + 1] ?? points[0];
        if (!to || from.u > uMm === to.u > uMm) return [];
        return [from.v + ((uMm - from.u) / (to.u - from.u)) * (to.v - from.v)];
      });
    })
    .sort((a, b) => a - b);
  return crossings.flatMap((from, index) => {
    const to = crossings[index + 1];
    return index % 2 === 0 && to !== undefined ? [[from, to] as const] : [];
  });
}
