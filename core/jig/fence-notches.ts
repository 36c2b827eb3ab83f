import { toCurve, walkCurve } from "../curves/index.ts";
import { at, type PlanPoint } from "../foundation/index.ts";
import { type FenceSheet, type Hand, partIdOf, type Sheet } from "../surfaces/index.ts";
import type { JigGround } from "./jig-ground.ts";

/** Room around a fence in the rib that it passes through, both sides together, mm. */
const CLEARANCE_MM = 3;
/** A fence's line is followed in steps of this, mm. */
const STEP_MM = 10;

/** One hand of a fence as a band in plan: its middle and both sides, with the lower edge's height. */
export interface FenceBand {
  readonly partId: string;
  /** Half of foam and both skins, without the clearance. */
  readonly halfMm: number;
  readonly lines: readonly (readonly PlanPoint[])[];
  readonly lowZMm: readonly number[];
  /** The lowest point of the finished fence. */
  readonly leastZMm: number;
}

/** A gap that a fence needs in the top of a rib: from, to along the rib, and the finished lower edge there. */
export interface Notch {
  readonly fencePartId: string;
  readonly fromMm: number;
  readonly toMm: number;
  readonly lowZMm: number;
}

/** Fences as bands wide enough for foam, both skins and clearance: each hand of each fence that is among the sheets. */
export const fenceBands = (sheets: readonly Sheet[], project: JigGround): FenceBand[] =>
  sheets.flatMap((sheet) =>
    sheet.kind === "fence" ? sheet.hands.map((hand) => fenceBand(sheet, project, hand)) : [],
  );

function fenceBand(sheet: FenceSheet, project: JigGround, hand: Hand): FenceBand {
  const sideOfY = hand === "left" ? -1 : 1;
  // A panel has its skins already, and none round its lower edge and ends.
  const { lowerMm, upperMm } = sheet.panel ? { lowerMm: 0, upperMm: 0 } : project.skins;
  const halfMm = (sheet.thicknessMm + lowerMm + upperMm + CLEARANCE_MM) / 2;
  const line = toCurve(
    sheet.chart.pieces.map(({ piece }) => piece),
    false,
  );
  const walk = walkCurve(line);
  const lower = lowerEdgeOf(sheet);
  const steps = Math.max(1, Math.ceil(line.lengthMm / STEP_MM));
  const stations = Array.from({ length: steps + 1 }, (_, i) => (line.lengthMm * i) / steps);
  const frames = stations.map((alongMm, i) => {
    const { at: middle, tangent } = walk(alongMm);
    const beyondMm = (CLEARANCE_MM / 2 + lowerMm) * (i === 0 ? -1 : i === steps ? 1 : 0);
    return { x: middle[0] + tangent[0] * beyondMm, y: middle[1] + tangent[1] * beyondMm, tangent };
  });
  const beside = (offsetMm: number) =>
    frames.map(({ x, y, tangent }) => ({
      x: x - tangent[1] * offsetMm,
      y: sideOfY * (y + tangent[0] * offsetMm),
    }));
  const lowZMm = stations.map((alongMm) => heightAlong(lower, alongMm) - lowerMm);
  return {
    partId: partIdOf(sheet.id, hand),
    halfMm: (sheet.thicknessMm + lowerMm + upperMm) / 2,
    lines: [beside(0), beside(halfMm), beside(-halfMm)],
    lowZMm,
    leastZMm: lower.reduce((least, { v }) => Math.min(least, v - lowerMm), Number.POSITIVE_INFINITY),
  };
}

/** The lower edge in chart coordinates, u ascending: everything below the line between both ends of the fence. */
export function lowerEdgeOf(sheet: FenceSheet): { readonly u: number; readonly v: number }[] {
  const edges = sheet.loops.flatMap((loop) => loop.edges);
  const lower = edges.filter(({ edgeId }) => edgeId === "lower");
  return (lower.length > 0 ? lower : edges)
    .flatMap((edge) => [...edge.points])
    .sort((a, b) => a.u - b.u || a.v - b.v);
}

/** Height of an edge in chart coordinates at a length along it; its end heights beyond its ends. */
export function heightAlong(
  line: readonly { readonly u: number; readonly v: number }[],
  uMm: number,
): number {
  const next = line.findIndex(({ u }) => u >= uMm);
  if (next < 0) return at(line, -1).v;
  if (next === 0) return at(line, 0).v;
  const a = at(line, next - 1);
  const b = at(line, next);
  return b.u > a.u ? a.v + ((uMm - a.u) / (b.u - a.u)) * (b.v - a.v) : Math.min(a.v, b.v);
}

/** Where fences pass through a rib that runs along `axis` and whose body lies between two other coordinates. */
export function notchesInRib(
  bands: readonly FenceBand[],
  runs: "across" | "along",
  body: readonly [fromMm: number, toMm: number],
): Notch[] {
  const [along, other] = runs === "across" ? (["y", "x"] as const) : (["x", "y"] as const);
  return bands.flatMap(({ partId, lines, lowZMm }) => {
    const bits = lines.flatMap((line) =>
      line.slice(1).flatMap((to, i): Notch[] => {
        const from = at(line, i);
        const span = clip(from[other], to[other], body);
        if (span === undefined) return [];
        const [a, b] = span.map((share) => from[along] + share * (to[along] - from[along]));
        if (a === undefined || b === undefined) return [];
        const lowZ = Math.min(at(lowZMm, i), at(lowZMm, i + 1));
        return [{ fencePartId: partId, fromMm: Math.min(a, b), toMm: Math.max(a, b), lowZMm: lowZ }];
      }),
    );
    return mergeNotches(bits);
  });
}

/** The shares of a segment between which its coordinate lies within a body; undefined where it never does. */
function clip(
  from: number,
  to: number,
  [least, most]: readonly [number, number],
): [number, number] | undefined {
  if (Math.max(from, to) < least || Math.min(from, to) > most) return undefined;
  if (from === to) return [0, 1];
  const a = (least - from) / (to - from);
  const b = (most - from) / (to - from);
  return [Math.max(0, Math.min(a, b)), Math.min(1, Math.max(a, b))];
}

/** The bits of middle and sides of one fence in one rib belong together: they are a band's width apart at most. */
function mergeNotches(bits: readonly Notch[]): Notch[] {
  const merged: Notch[] = [];
  for (const bit of [...bits].sort((a, b) => a.fromMm - b.fromMm)) {
    const last = merged[merged.length - 1];
    if (last === undefined || bit.fromMm > last.toMm + 60) merged.push(bit);
    else {
      const toMm = Math.max(last.toMm, bit.toMm);
      merged[merged.length - 1] = { ...last, toMm, lowZMm: Math.min(last.lowZMm, bit.lowZMm) };
    }
  }
  return merged;
}
