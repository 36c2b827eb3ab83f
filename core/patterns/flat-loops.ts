import { at, distanceFlat, type FlatPoint } from "../foundation/index.ts";
import type { EdgeSetBack, SetBack } from "../joints/index.ts";
import { type FibreStretch, flatOnEdges, type RegionEdge, type Sheet } from "../surfaces/index.ts";
import { type LaidPoints, stretching } from "./stretch-edges.ts";
import type { FlatEdge, FlatLoop } from "./types.ts";

/** A drawn edge laid flat, with how far it is to be moved inward at each of its points, and its bevel there. */
export interface LaidEdge extends FlatEdge {
  readonly setBackMm: readonly number[];
  readonly bevelsRad: readonly number[];
}

export interface LaidLoop {
  readonly edges: readonly LaidEdge[];
}

/**
 * A sheet's region laid flat at the fibre that keeps its length, which is the middle of its foam but in the stretches that
 * are given. Where a set-back changes along an edge, the edge has a point at every place that the set-back names; an edge
 * that runs slantwise through a stretch has points close enough to follow it. Region edges in a row with one id become one
 * edge.
 */
export function layLoopsFlat(
  sheet: Sheet,
  setBacks: readonly SetBack[],
  stretches: readonly FibreStretch[] = [],
): readonly LaidLoop[] {
  const used = new Map<string, number>();
  const isWhole = setBacks.length === 0 && stretches.length === 0;
  const flatOn = sheet.kind === "fence" || isWhole ? undefined : flatOnEdges(sheet);
  const stretched = stretching(sheet, stretches);
  return sheet.loops.map(({ edges }) => {
    const laid = edges.map((edge): LaidEdge => {
      const setBack = setBacks.find(({ edgeId }) => edgeId === edge.edgeId);
      const nth = used.get(edge.edgeId) ?? 0;
      used.set(edge.edgeId, nth + 1);
      return {
        edgeId: edge.edgeId,
        name: edge.name,
        role: setBack && isSetBack(setBack) && edge.role === "free" ? "joint" : edge.role,
        ...stretched(layEdge(edge, setBack?.edges[nth], flatOn), (share) => flatOn?.(edge, share)),
      };
    });
    return { edges: mergeRuns(laid) };
  });
}

const isSetBack = ({ edges }: SetBack): boolean => edges.some(({ isJoined }) => isJoined);

function layEdge(
  edge: RegionEdge,
  setBack: EdgeSetBack | undefined,
  flatOn: ReturnType<typeof flatOnEdges> | undefined,
): LaidPoints {
  const isEven = !setBack || (isConstant(setBack.amountsMm) && isConstant(setBack.bevelsRad));
  if (isEven || !flatOn) {
    const fill = (value: number | undefined) => edge.flat.map(() => value ?? 0);
    return {
      shares: edge.shares,
      points: edge.flat,
      setBackMm: fill(setBack?.amountsMm[0]),
      bevelsRad: edge.bevelsRad ?? fill(setBack?.bevelsRad[0]),
    };
  }
  const shares = [...new Set([...edge.shares, ...setBack.shares])].sort((a, b) => a - b);
  const kept = shares.filter((share, i) => i === 0 || share - at(shares, i - 1) > SAME_SHARE);
  return {
    shares: kept,
    points: kept.map((share) => edge.flat[edge.shares.indexOf(share)] ?? flatOn(edge, share)),
    setBackMm: kept.map((share) => valueAtShare(setBack.shares, setBack.amountsMm, share)),
    bevelsRad: kept.map((share) => valueAtShare(setBack.shares, setBack.bevelsRad, share)),
  };
}

/** Shares nearer than this are one place: a nanometre on a metre. */
const SAME_SHARE = 1e-12;

const isConstant = (values: readonly number[]): boolean => values.every((value) => value === values[0]);

/** Straight between the places of a table; shares ascend. */
function valueAtShare(shares: readonly number[], values: readonly number[], share: number): number {
  const next = shares.findIndex((known) => known >= share);
  if (next <= 0) return next < 0 ? at(values, -1) : at(values, 0);
  const [a, b] = [at(shares, next - 1), at(shares, next)];
  const part = b > a ? (share - a) / (b - a) : 1;
  return at(values, next - 1) + (at(values, next) - at(values, next - 1)) * part;
}

function mergeRuns(laid: readonly LaidEdge[]): readonly LaidEdge[] {
  const start = laid.findIndex(
    (edge, i) => edge.edgeId !== at(laid, (i + laid.length - 1) % laid.length).edgeId,
  );
  const from = Math.max(0, start);
  const merged: LaidEdge[] = [];
  for (let i = 0; i < laid.length; i++) {
    const edge = at(laid, (from + i) % laid.length);
    const last = merged.at(-1);
    if (last?.edgeId === edge.edgeId) {
      merged[merged.length - 1] = {
        ...last,
        points: [...last.points, ...edge.points.slice(1)],
        setBackMm: [...last.setBackMm, ...edge.setBackMm.slice(1)],
        bevelsRad: [...last.bevelsRad, ...edge.bevelsRad.slice(1)],
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
