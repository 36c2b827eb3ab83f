import type { Strip } from "../cutting/index.ts";
import { at, distanceFlat, type FlatPoint } from "../foundation/index.ts";
import { type FlatEdge, flatLengthMm, type PartEdge } from "../patterns/index.ts";

/** An edge of a strip with its bevel at each of its points, rad. */
export interface BevelledEdge extends FlatEdge {
  readonly bevelsRad: readonly number[];
}

export interface BevelledLoop {
  readonly edges: readonly BevelledEdge[];
}

/** Whether any edge of a strip is cut off square. */
export const hasBevels = (strip: Strip): boolean => strip.edges.some(({ bevels }) => bevels.length > 0);

/**
 * The loops of a strip with the bevel at every point, and a further point wherever the bevel is told between two of
 * them.
 */
export function bevelledLoops(strip: Strip): readonly BevelledLoop[] {
  let index = 0;
  return strip.loops.map(({ edges }) => ({
    edges: edges.map((edge) => {
      const measured = strip.edges[index];
      index += 1;
      return withBevels(edge, measured?.edgeId === edge.edgeId ? measured.bevels : []);
    }),
  }));
}

function withBevels(edge: FlatEdge, bevels: PartEdge["bevels"]): BevelledEdge {
  if (bevels.length === 0) return { ...edge, bevelsRad: edge.points.map(() => 0) };
  // A fence's seat is told by length in plan, a hair shorter than its edge.
  const lengthMm = flatLengthMm(edge.points);
  const told = at(bevels, -1).alongMm;
  const stations = bevels.map((station) => ({
    alongMm: told > 0 ? (station.alongMm * lengthMm) / told : 0,
    bevelRad: station.bevelRad,
  }));
  const points: FlatPoint[] = [];
  const bevelsRad: number[] = [];
  const add = (point: FlatPoint, alongMm: number) => {
    points.push(point);
    bevelsRad.push(bevelAlong(stations, alongMm));
  };
  let passedMm = 0;
  edge.points.forEach((point, i) => {
    const before = edge.points[i - 1];
    if (before !== undefined) {
      const stepMm = distanceFlat(before, point);
      for (const { alongMm } of stations) {
        const share = (alongMm - passedMm) / (stepMm || 1);
        if (share * stepMm > NEAR_MM && (1 - share) * stepMm > NEAR_MM)
          add(between(before, point, share), alongMm);
      }
      passedMm += stepMm;
    }
    add(point, passedMm);
  });
  return { ...edge, points, bevelsRad };
}

/** A place nearer to a point of the edge is told there, mm. */
const NEAR_MM = 1e-3;

const between = (a: FlatPoint, b: FlatPoint, share: number): FlatPoint => ({
  u: a.u + (b.u - a.u) * share,
  v: a.v + (b.v - a.v) * share,
});

/** The bevel at a length from an edge's start, rad: straight between two stations, 0 where there are none. */
export function bevelAlong(bevels: PartEdge["bevels"], alongMm: number): number {
  const next = bevels.findIndex((station) => station.alongMm >= alongMm);
  const b = bevels[next < 0 ? bevels.length - 1 : next];
  const a = bevels[next - 1];
  if (b === undefined || a === undefined || next < 0) return b?.bevelRad ?? 0;
  const stepMm = b.alongMm - a.alongMm;
  return stepMm > 0 ? a.bevelRad + ((b.bevelRad - a.bevelRad) * (alongMm - a.alongMm)) / stepMm : b.bevelRad;
}
