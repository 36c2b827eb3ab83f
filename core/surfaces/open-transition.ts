import { flattenPiece, pointOnPiece } from "../curves/index.ts";
import { at, type PlanPoint } from "../foundation/index.ts";
import { type RuledSurface, rulingAt } from "../rulings/index.ts";
import { type CutIsland, type CutPiece, cutRuled } from "./cut-ruled.ts";
import type { DrawnPiece } from "./drawn-loops.ts";
import { polygonsContain } from "./inside-polygons.ts";
import { meetOnRuled } from "./meet-on-ruled.ts";
import type { OpeningLoops } from "./opening-loops.ts";
import { frontToRear } from "./region-islands.ts";
import { stripBorder } from "./ruled-border.ts";
import { wallFinders } from "./ruled-walls.ts";
import { type TracedStrip, traceBorder, traceWall, wallLimits } from "./trace-ruled.ts";
import type { RegionEdge, RegionLoop, RuledCover } from "./types.ts";

type Polygons = readonly (readonly PlanPoint[])[];

/** A strip to be cut: its shares of the rulings, and how it is laid. */
export interface OpenedStrip extends TracedStrip {
  readonly shares: readonly [number, number];
}

/** What openings leave of a transition: one body, or several where they cut it apart, from front to rear. */
export interface OpenedTransition {
  readonly bodies: readonly {
    readonly loops: readonly RegionLoop[];
    readonly planLoops: Polygons;
    readonly cover: RuledCover;
  }[];
  /** The openings that take something away. */
  readonly openingIds: readonly string[];
}

/** What takes away less is a line along an edge that was meant to lie on it. */
const LEAST_CUT_MM2 = 1;

/**
 * Cuts openings out of a transition that lies over the plan: on the air side, its corners then met on the neutral fibre;
 * where that has other corners it is cut anew there. Undefined where nothing is cut.
 */
export function openTransition(
  surface: RuledSurface,
  strips: readonly OpenedStrip[],
  candidates: readonly OpeningLoops[],
  neutralMm: number,
): OpenedTransition | undefined {
  if (candidates.length === 0) return undefined;
  const isUp = rulingAt(surface, surface.lengthSMm / 2).normal.z > 0;
  const border = stripBorder(surface, [0, 1], { strip: 0, count: 1 });
  const cutWhole = (loops: readonly (readonly DrawnPiece[])[], depthMm = 0) =>
    cutRuled(surface, border, loops, { depthMm, isUp });
  const areaOf = (islands: readonly CutIsland[]) => islands.reduce((sum, { areaMm2 }) => sum + areaMm2, 0);
  const wholeMm2 = areaOf(cutWhole([]));
  const cutting = candidates.filter(({ loops }) => wholeMm2 - areaOf(cutWhole(loops)) > LEAST_CUT_MM2);
  if (cutting.length === 0) return undefined;
  const openings = cutting.flatMap(({ loops }) => loops);
  const cut: Cut = { surface, strips, openings, neutralMm, isUp };
  const drawn = cutWhole(openings);
  const bodies =
    bodiesOf(cut, drawn, 0) ?? bodiesOf(cut, withoutFeathers(cut, cutWhole(openings, neutralMm)), neutralMm);
  return bodies && { bodies, openingIds: cutting.map(({ opening }) => opening.id) };
}

interface Cut {
  readonly surface: RuledSurface;
  readonly strips: readonly OpenedStrip[];
  readonly openings: readonly (readonly DrawnPiece[])[];
  readonly neutralMm: number;
  readonly isUp: boolean;
}

/** Islands no wider than the walls lean are the feather edge of a wall and left out. */
function withoutFeathers(cut: Cut, islands: readonly CutIsland[]): readonly CutIsland[] {
  return islands.filter(({ meanWidthMm }) => meanWidthMm > 2 * leanMm(cut));
}

function leanMm({ surface, neutralMm }: Cut): number {
  const shares = [0, 0.25, 0.5, 0.75, 1];
  const leans = shares.map((share) => {
    const { x, y } = rulingAt(surface, share * surface.lengthSMm).normal;
    return Math.hypot(x, y);
  });
  return Math.abs(neutralMm) * Math.max(...leans);
}

/** The bodies of a transition cut at a depth; undefined where the neutral fibre has other corners than that depth. */
function bodiesOf(
  cut: Cut,
  islands: readonly CutIsland[],
  depthMm: number,
): OpenedTransition["bodies"] | undefined {
  const { surface, strips, openings, isUp } = cut;
  const ordered = frontToRear(
    islands.map(({ loops }) => ({ planLoops: loops.map(polygonOfLoop), loops: [] as RegionLoop[] })),
  );
  for (const strip of strips) {
    const border = stripBorder(surface, strip.shares, { strip: strip.strip, count: strips.length });
    const cutIslands = cutRuled(surface, border, openings, { depthMm, isUp });
    const kept = depthMm === 0 ? cutIslands : withoutFeathers(cut, cutIslands);
    for (const island of kept) {
      const loops = traceIsland(cut, strip, island);
      if (!loops) return undefined;
      const middle = pointInside(island.loops.map(polygonOfLoop));
      const body =
        ordered.length === 1
          ? ordered[0]
          : ordered.find(({ planLoops }) => polygonsContain(planLoops, middle));
      body?.loops.push(...loops);
    }
  }
  const cover = {
    square: openings.filter((loop) => loop[0]?.wall === "square").map(polygonOfLoop),
    upright: openings.filter((loop) => loop[0]?.wall === "upright").map(polygonOfLoop),
  };
  return ordered.map((body) => {
    const others = ordered.filter((other) => other !== body).flatMap(({ planLoops }) => planLoops);
    const own = ordered.length > 1 ? body.planLoops : [];
    return { ...body, cover: { ...cover, own, others } };
  });
}

/** A wall that leaves its strip by more than this has other corners at the neutral fibre. */
const OUTSIDE = 1e-6;

function traceIsland(
  { surface, neutralMm }: Cut,
  strip: OpenedStrip,
  { runs, areaMm2 }: CutIsland,
): readonly RegionLoop[] | undefined {
  const finders = wallFinders(surface, neutralMm);
  const met = runs.map((loop) => meetOnRuled({ surface, neutralMm, finders }, loop));
  const loops = met.flatMap((loop) => (loop ? [loop] : []));
  if (loops.length < met.length) return undefined;
  const limitsOf = wallLimits(loops, areaMm2);
  const traced: RegionLoop[] = [];
  for (const loop of loops) {
    const edges: RegionEdge[] = [];
    for (const run of loop) {
      if (run.border) {
        edges.push(...traceBorder(strip, run.border));
        continue;
      }
      const edge = traceWall(strip, run.wall, limitsOf(run.wall), finders);
      if (!edge?.points.every(isWithin(surface, strip))) return undefined;
      edges.push(edge);
    }
    traced.push({ edges });
  }
  return traced;
}

const isWithin =
  ({ lengthSMm }: RuledSurface, { shares: [fromT, toT] }: OpenedStrip) =>
  ({ u, v }: RegionEdge["points"][number]): boolean =>
    u > -OUTSIDE && u < lengthSMm + OUTSIDE && v > fromT - OUTSIDE && v < toT + OUTSIDE;

/** How exactly a plan polygon knows where its sheet ends, mm. */
const POLYGON_ERROR_MM = 0.02;

const polygonOfLoop = (loop: readonly Pick<CutPiece, "piece" | "reversed">[]): readonly PlanPoint[] =>
  loop.flatMap(({ piece, reversed }) => {
    const along = flattenPiece(piece, { chordErrorMm: POLYGON_ERROR_MM, turnRad: 0.2 });
    return (reversed ? along.toReversed() : along).slice(0, -1).map((t): PlanPoint => {
      const [x, y] = pointOnPiece(piece, t);
      return { x, y };
    });
  });

/** A point inside polygons: the middle of the widest stretch of the level line through the middle of the first. */
function pointInside(polygons: Polygons): PlanPoint {
  const ys = at(polygons, 0).map(({ y }) => y);
  const y = (Math.min(...ys) + Math.max(...ys)) / 2 + 1e-7;
  const xs = polygons.flatMap((polygon) =>
    polygon.flatMap((to, i) => {
      const from = at(polygon, i - 1);
      if (to.y > y === from.y > y) return [];
      return [from.x + ((y - from.y) / (to.y - from.y)) * (to.x - from.x)];
    }),
  );
  xs.sort((a, b) => a - b);
  let [best, widest] = [0, -1];
  for (let i = 0; i + 1 < xs.length; i += 2) {
    const width = at(xs, i + 1) - at(xs, i);
    if (width > widest) [best, widest] = [(at(xs, i) + at(xs, i + 1)) / 2, width];
  }
  return { x: best, y };
}
