import { at, distanceFlat, type FlatPoint } from "../foundation/index.ts";
import type { FlatEdge, FlatLoop } from "../patterns/index.ts";

/** Least and greatest u and v of something flat, mm. */
export interface FlatBounds {
  readonly leastUMm: number;
  readonly mostUMm: number;
  readonly leastVMm: number;
  readonly mostVMm: number;
}

/** The area inside a polygon, mm²; positive when it runs counter-clockwise (shoelace formula). */
export function signedAreaMm2(points: readonly FlatPoint[]): number {
  const first = points[0];
  if (first === undefined) return 0;
  let doubled = 0;
  let previous = at(points, -1);
  for (const point of points) {
    doubled += (previous.u - first.u) * (point.v - first.v) - (point.u - first.u) * (previous.v - first.v);
    previous = point;
  }
  return doubled / 2;
}

/** The length of an edge as it is written, mm. */
export function lengthOfEdgeMm(edge: FlatEdge): number {
  let lengthMm = 0;
  for (let i = 1; i < edge.points.length; i++) {
    lengthMm += distanceFlat(at(edge.points, i - 1), at(edge.points, i));
  }
  return lengthMm;
}

/** The upright box around polygons, mm. */
export function boundsOfPoints(polygons: readonly (readonly FlatPoint[])[]): FlatBounds {
  let leastUMm = Number.POSITIVE_INFINITY;
  let mostUMm = Number.NEGATIVE_INFINITY;
  let leastVMm = Number.POSITIVE_INFINITY;
  let mostVMm = Number.NEGATIVE_INFINITY;
  for (const points of polygons) {
    for (const { u, v } of points) {
      if (u < leastUMm) leastUMm = u;
      if (u > mostUMm) mostUMm = u;
      if (v < leastVMm) leastVMm = v;
      if (v > mostVMm) mostVMm = v;
    }
  }
  return { leastUMm, mostUMm, leastVMm, mostVMm };
}

/** The box around loops, mm. */
export const boundsOfLoops = (loops: readonly FlatLoop[]): FlatBounds =>
  boundsOfPoints(loops.flatMap((loop) => loop.edges.map((edge) => edge.points)));
