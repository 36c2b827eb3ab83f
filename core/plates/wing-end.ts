import { at, type Vec2 } from "../foundation/index.ts";
import type { BendFigures } from "./types.ts";

/**
 * How a bend ends on one side, in the frame of its edge from that side's corner (along, outward). `footMm` is where
 * the bend ends; `relief` leads to the foot from the base's outline, foot left out, and is empty where the bend ends
 * on the outline anyway. `neighbourCutMm` is how much of the edge beyond the corner falls away, from the corner.
 */
export interface WingEnd {
  readonly kind: "in edge" | "at corner" | "at neighbour";
  readonly footMm: number;
  readonly relief: readonly Vec2[];
  readonly neighbourCutMm?: number;
}

/** What lies beyond the corner: the next edge, walked away from the corner, which is [0, 0]; and its wing there. */
export interface WingNeighbour {
  readonly points: readonly Vec2[];
  readonly wing?: { readonly figures: BendFigures; readonly insetMm: number };
}

/** Computed points nearer than this are one; what is drawn is never so near. */
const SAME_MM = 1e-9;

/** A bend that ends within this of the outline ends on it. */
const ON_OUTLINE_MM = 0.01;

/**
 * Ends a bend that is drawn from `insetMm` along its edge: in the edge, with a relief cut beside it; on the outline,
 * where the next edge runs off square or narrows the base (the bend is then shortened to it); in a corner cut shared
 * with the next edge's wing; or beside an inner corner. Undefined where the next edge is too short for the relief.
 */
export function wingEnd(
  figures: BendFigures,
  insetMm: number,
  neighbour: WingNeighbour,
): WingEnd | undefined {
  const shared = sharedCorner(figures, insetMm, neighbour);
  if (shared) return shared;
  if (fitsInEdge(figures, insetMm, neighbour.points)) return slotEnd(figures, insetMm);
  if (isInnerCorner(neighbour.points)) return endAtInnerCorner(figures);
  return endOnOutline(figures, insetMm, neighbour.points) ?? endInCorner(figures, insetMm, neighbour.points);
}

/** A slot beside the bend; its outer side starts on the drawn edge. */
export function slotEnd({ reliefWidthMm, reliefDepthMm }: BendFigures, insetMm: number): WingEnd {
  const outer = insetMm - reliefWidthMm;
  return {
    kind: "in edge",
    footMm: insetMm,
    relief: [
      [outer, 0],
      [outer, -reliefDepthMm],
      [insetMm, -reliefDepthMm],
    ],
  };
}

function fitsInEdge(figures: BendFigures, insetMm: number, neighbour: readonly Vec2[]): boolean {
  const outer = insetMm - figures.reliefWidthMm;
  if (outer < 0) return false;
  return !neighbour.some((to, i) => {
    const from = neighbour[i - 1];
    return from !== undefined && entersSlot(from, to, outer, figures.reliefDepthMm);
  });
}

/** Whether a stretch has a point with a > outer, -depth < b < 0. */
function entersSlot(from: Vec2, to: Vec2, outer: number, depthMm: number): boolean {
  const tOf = (axis: 0 | 1, value: number) => (value - from[axis]) / (to[axis] - from[axis]);
  const stops = [0, 1, tOf(0, outer), tOf(1, -depthMm), tOf(1, 0)]
    .filter((t) => t >= 0 && t <= 1)
    .sort((a, b) => a - b);
  return stops.some((t, i) => {
    const before = stops[i - 1];
    if (before === undefined || t - before < 1e-12) return false;
    const middle = (t + before) / 2;
    const [a, b] = between(from, to, middle);
    return a > outer && b < 0 && b > -depthMm;
  });
}

const between = (from: Vec2, to: Vec2, t: number): Vec2 => [
  from[0] + (to[0] - from[0]) * t,
  from[1] + (to[1] - from[1]) * t,
];

/** How far an outline turns at the corner, positive for an outer corner. */
function turnRad(neighbour: readonly Vec2[]): number {
  const [a, b] = at(neighbour, 1);
  // Beyond an outer corner the next edge runs away below [a, 0]; straight on it would run along -a.
  return Math.atan2(-b, -a);
}

/** Corners that turn less than this either way are straight. */
const STRAIGHT_RAD = 1e-6;

const isInnerCorner = (neighbour: readonly Vec2[]): boolean => turnRad(neighbour) < -STRAIGHT_RAD;

/** Beside an inner corner a slot sets the bend off from the base that goes on there. */
function endAtInnerCorner({ reliefWidthMm, reliefDepthMm }: BendFigures): WingEnd {
  return {
    kind: "at corner",
    footMm: reliefWidthMm,
    relief: [
      [0, 0],
      [0, -reliefDepthMm],
      [reliefWidthMm, -reliefDepthMm],
    ],
  };
}

/**
 * Where both edges of an outer corner bear wings that reach it, one cut serves both: its inner end lies on the
 * bisector at the greater relief depth, and each bend ends beside it, a relief's width between their feet.
 */
function sharedCorner(
  figures: BendFigures,
  insetMm: number,
  { points, wing }: WingNeighbour,
): WingEnd | undefined {
  const turn = turnRad(points);
  if (!wing || turn < -STRAIGHT_RAD) return undefined;
  const depthMm = Math.max(figures.reliefDepthMm, wing.figures.reliefDepthMm);
  const widthMm = Math.max(figures.reliefWidthMm, wing.figures.reliefWidthMm);
  const slope = Math.tan(turn / 2);
  const reachMm = depthMm * slope + widthMm;
  if (insetMm >= reachMm || wing.insetMm >= reachMm) return undefined;
  const apartMm = figures.airSetBackMm * slope + widthMm / (2 * Math.cos(turn / 2));
  const footMm = Math.max(insetMm, depthMm * slope, apartMm);
  const inner: Vec2 = [depthMm * slope, -depthMm];
  const relief: readonly Vec2[] = footMm > depthMm * slope ? [inner, [footMm, -depthMm]] : [inner];
  return { kind: "at corner", footMm, relief };
}

/** Where the next edge crosses the line where the bend begins: the bend ends there if it does not reach so far. */
function endOnOutline(
  figures: BendFigures,
  insetMm: number,
  neighbour: readonly Vec2[],
): WingEnd | undefined {
  const met = firstBeyond(neighbour, [(_, b) => -figures.airSetBackMm - b]);
  if (!met || met.at[0] < insetMm - ON_OUTLINE_MM) return undefined;
  return { kind: "at corner", footMm: met.at[0], relief: [], neighbourCutMm: met.alongMm };
}

/** The relief takes the corner off: the next edge is cut where it leaves the relief's box. */
function endInCorner(
  { reliefWidthMm, reliefDepthMm }: BendFigures,
  insetMm: number,
  neighbour: readonly Vec2[],
): WingEnd | undefined {
  const outer = Math.min(insetMm - reliefWidthMm, 0);
  const left = firstBeyond(neighbour, [
    (a) => outer - a,
    (a) => a - insetMm - SAME_MM,
    (_, b) => -reliefDepthMm - b,
  ]);
  if (!left) return undefined;
  const [a] = left.at;
  const isThroughFoot = a >= insetMm - SAME_MM;
  const corner: Vec2 = [Math.max(a, outer), -reliefDepthMm];
  const under: readonly Vec2[] = isThroughFoot ? [] : [corner, [insetMm, -reliefDepthMm]];
  const relief = [left.at, ...under].filter((point, i, all) => i === 0 || !isSame(point, at(all, i - 1)));
  return { kind: "at corner", footMm: insetMm, relief, neighbourCutMm: left.alongMm };
}

const isSame = (p: Vec2, q: Vec2): boolean => Math.hypot(p[0] - q[0], p[1] - q[1]) < SAME_MM;

type Limit = (a: number, b: number) => number;

/** The first point of a polyline where one of several linear functions rises to 0; all are below 0 inside. */
function firstBeyond(
  points: readonly Vec2[],
  limits: readonly Limit[],
): { readonly at: Vec2; readonly alongMm: number } | undefined {
  let alongMm = 0;
  for (let i = 1; i < points.length; i++) {
    const [from, to] = [at(points, i - 1), at(points, i)];
    const stepMm = Math.hypot(to[0] - from[0], to[1] - from[1]);
    const reached = limits.filter((limit) => limit(...to) >= 0);
    if (reached.length > 0) {
      const t = Math.min(...reached.map((limit) => crossing(limit(...from), limit(...to))));
      return { at: between(from, to, t), alongMm: alongMm + stepMm * t };
    }
    alongMm += stepMm;
  }
  return undefined;
}

/** Where a straight line from `start` at 0 to `end` at 1 crosses zero; at 0 if it starts there. */
const crossing = (start: number, end: number): number => (start >= 0 ? 0 : start / (start - end));
