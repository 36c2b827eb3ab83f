import { at, distanceFlat, type FlatPoint } from "../foundation/index.ts";
import type { SetBack } from "../joints/index.ts";
import type { RegionEdge, Sheet } from "../surfaces/index.ts";
import type { FlatEdge, FlatLoop } from "./types.ts";

/** A drawn edge laid flat, with how far it is to be moved inward at each of its points. */
export interface LaidEdge extends FlatEdge {
  readonly setBackMm: readonly number[];
}

export interface LaidLoop {
  readonly edges: readonly LaidEdge[];
}

/**
 * A sheet's region laid flat at its neutral fibre: u − depth × turn along the bend, v unchanged (a general
 * cylinder's offset is a cylinder on the same rulings, and its right section is shorter by depth × turning angle).
 * Region edges in a row with one id become one edge.
 */
export function layLoopsFlat(sheet: Sheet, setBacks: readonly SetBack[]): readonly LaidLoop[] {
  const depth = sheet.depths.neutralMm;
  const used = new Map<string, number>();
  return sheet.loops.map(({ edges }) => {
    const laid = edges.map((edge): LaidEdge => {
      const points = edge.points.map(
        ({ u, v }, i): FlatPoint => ({ u: u - depth * at(edge.turnsRad, i), v }),
      );
      const setBack = setBacks.find(({ edgeId }) => edgeId === edge.edgeId);
      const nth = used.get(edge.edgeId) ?? 0;
      used.set(edge.edgeId, nth + 1);
      return {
        edgeId: edge.edgeId,
        name: edge.name,
        role: setBack && edge.role === "free" ? "joint" : edge.role,
        points,
        setBackMm: spread(points, setBack?.amountsMm[nth] ?? [0, 0]),
      };
    });
    return { edges: mergeRuns(laid, edges) };
  });
}

/** An amount that goes evenly from one end of a polyline to the other. */
function spread(points: readonly FlatPoint[], [from, to]: readonly [number, number]): readonly number[] {
  if (from === to) return points.map(() => from);
  const along = [0];
  for (let i = 1; i < points.length; i++) {
    along.push(at(along, -1) + distanceFlat(at(points, i - 1), at(points, i)));
  }
  const total = at(along, -1) || 1;
  return along.map((s) => from + ((to - from) * s) / total);
}

function mergeRuns(laid: readonly LaidEdge[], edges: readonly RegionEdge[]): readonly LaidEdge[] {
  const start = laid.findIndex(
    (edge, i) => edge.edgeId !== at(laid, (i + laid.length - 1) % laid.length).edgeId,
  );
  const from = Math.max(0, start);
  const merged: LaidEdge[] = [];
  for (let i = 0; i < edges.length; i++) {
    const edge = at(laid, (from + i) % laid.length);
    const last = merged.at(-1);
    if (last?.edgeId === edge.edgeId) {
      merged[merged.length - 1] = {
        ...last,
        points: [...last.points, ...edge.points.slice(1)],
        setBackMm: [...last.setBackMm, ...edge.setBackMm.slice(1)],
      };
    } else {
      merged.push(edge);
    }
  }
  return merged;
}

/** The closed polygon of a loop: every edge's points but its last. */
export function polygonOfLoop({ edges }: FlatLoop): readonly FlatPoint[] {
  const polygon: FlatPoint[] = [];
  for (const { points } of edges) {
    for (let i = 0; i + 1 < points.length; i++) polygon.push(at(points, i));
  }
  return polygon;
}

/** Length of a flat polyline, mm. */
export function flatLengthMm(points: readonly FlatPoint[]): number {
  let length = 0;
  for (let i = 1; i < points.length; i++) length += distanceFlat(at(points, i - 1), at(points, i));
  return length;
}

/** Signed area inside a loop, positive counter-clockwise, mm²; taken about its first point to keep digits. */
export function loopAreaMm2({ edges }: FlatLoop): number {
  const origin = edges[0]?.points[0];
  if (!origin) return 0;
  let twice = 0;
  let a = origin;
  for (const { points } of edges) {
    for (let i = 0; i + 1 < points.length; i++) {
      const b = at(points, i);
      twice += (a.u - origin.u) * (b.v - origin.v) - (b.u - origin.u) * (a.v - origin.v);
      a = b;
    }
  }
  return twice / 2;
}

/** Area of loops together, holes (clockwise) taken off, mm². */
export const loopsAreaMm2 = (loops: readonly FlatLoop[]): number =>
  loops.reduce((area, loop) => area + loopAreaMm2(loop), 0);
