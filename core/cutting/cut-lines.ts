import { EndType, FillRule, inflatePathsD, JoinType, unionD } from "clipper2-ts";
import { at, type FlatPoint } from "../foundation/index.ts";
import { type FlatEdge, type FlatLoop, polygonOfLoop } from "../patterns/index.ts";
import { signedAreaMm2 } from "./loop-measures.ts";
import { offsetLoops } from "./offset-loops.ts";

type Polygon = readonly FlatPoint[];

/** The lines to cut a piece by, and the edges that they pass over. */
export interface CutLines {
  readonly linesMm: readonly Polygon[];
  /** Edges of notches, slots and holes too narrow for the allowance: nothing is cut there. */
  readonly swallowed: readonly FlatEdge[];
}

/** A line to cut by lies no farther from its edge than this many allowances: the mitre of a sharp corner. */
const FARTHEST = 4;
const NEAR_MM = 0.1;
/** Areas that differ by less are one, mm². */
const SAME_MM2 = 0.01;
/** Decimals of a mm that clipper2-ts works with. */
const CLIPPER_DECIMALS = 5;

/**
 * The finished lines moved away from the foam, each edge by its own allowance (see `offsetLoops`). Where that makes a
 * line cross itself or another, the crossing stretches are taken out (clipper2-ts), so that the blade never enters the
 * part.
 */
export function cutLinesOf(loops: readonly FlatLoop[], outwardMm: (edge: FlatEdge) => number): CutLines {
  const finished = loops.map(polygonOfLoop);
  if (loops.every(({ edges }) => edges.every((edge) => outwardMm(edge) === 0)))
    return { linesMm: finished, swallowed: [] };
  const open = loops.filter((loop) => !closesOver(loop, outwardMm));
  const moved = offsetLoops(open, outwardMm);
  const linesMm = withoutCrossings(moved);
  const hasLost = linesMm !== moved || pointsIn(moved) < pointsIn(finished);
  return { linesMm, swallowed: hasLost ? edgesPassedOver(loops, linesMm, outwardMm) : [] };
}

/** Whether a hole is so small that nothing of it is left inside its allowance. */
function closesOver(loop: FlatLoop, outwardMm: (edge: FlatEdge) => number): boolean {
  const polygon = polygonOfLoop(loop);
  if (signedAreaMm2(polygon) >= 0) return false;
  const inward = -Math.min(...loop.edges.map(outwardMm));
  const path = polygon.toReversed().map(({ u, v }) => ({ x: u, y: v }));
  return (
    inflatePathsD([path], inward, JoinType.Miter, EndType.Polygon, FARTHEST, CLIPPER_DECIMALS).length === 0
  );
}

const pointsIn = (polygons: readonly Polygon[]): number =>
  polygons.reduce((sum, { length }) => sum + length, 0);

/** The lines themselves where none crosses itself or another. */
function withoutCrossings(lines: readonly Polygon[]): readonly Polygon[] {
  const paths = lines.map((line) => line.map(({ u, v }) => ({ x: u, y: v })));
  const united = unionD(paths, [], FillRule.Positive, CLIPPER_DECIMALS).map(
    (path): Polygon => path.map(({ x, y }) => ({ u: x, v: y })),
  );
  const isSame = united.length === lines.length && Math.abs(areaOf(united) - areaOf(lines)) < SAME_MM2;
  return isSame ? lines : united.toSorted((a, b) => signedAreaMm2(b) - signedAreaMm2(a));
}

const areaOf = (polygons: readonly Polygon[]): number =>
  polygons.reduce((sum, polygon) => sum + signedAreaMm2(polygon), 0);

function edgesPassedOver(
  loops: readonly FlatLoop[],
  lines: readonly Polygon[],
  outwardMm: (edge: FlatEdge) => number,
): readonly FlatEdge[] {
  return loops.flatMap((loop) => {
    const { edges } = loop;
    const mostMm = FARTHEST * Math.max(...edges.map(outwardMm)) + NEAR_MM;
    const isHole = signedAreaMm2(polygonOfLoop(loop)) < 0;
    const ofItsKind = lines.filter((line) => signedAreaMm2(line) < 0 === isHole);
    return edges.filter(({ points }) => points.some((point) => distanceToLines(point, ofItsKind) > mostMm));
  });
}

function distanceToLines(point: FlatPoint, lines: readonly Polygon[]): number {
  let least = Number.POSITIVE_INFINITY;
  for (const line of lines)
    for (let i = 0; i < line.length; i += 1)
      least = Math.min(least, distanceToStretch(point, at(line, i - 1), at(line, i)));
  return least;
}

function distanceToStretch(p: FlatPoint, a: FlatPoint, b: FlatPoint): number {
  const [du, dv] = [b.u - a.u, b.v - a.v];
  const squareMm2 = du * du + dv * dv;
  const share = squareMm2 === 0 ? 0 : ((p.u - a.u) * du + (p.v - a.v) * dv) / squareMm2;
  const t = Math.min(1, Math.max(0, share));
  return Math.hypot(p.u - a.u - t * du, p.v - a.v - t * dv);
}
