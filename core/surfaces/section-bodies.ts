import { type CurvePiece, enclosedAreaMm2, flattenPiece, pointOnPiece } from "../curves/index.ts";
import type { PlanPoint } from "../foundation/index.ts";
import { chordLimits, type Fineness } from "./chord-limits.ts";
import { cylinderChart } from "./cylinder-chart.ts";
import { type DrawnPiece, polygonOf } from "./drawn-loops.ts";
import { meetWallsAt } from "./meet-walls.ts";
import type { OpenedSection } from "./open-section.ts";
import { boxOf, clipToXi, planAreaMm2 } from "./plan-polygons.ts";
import { type Corner, mitrePlane } from "./profile-corners.ts";
import { bordersOfLoops, countIslands, islandsOf } from "./region-islands.ts";
import { traceLoops, type XiLimits } from "./trace-loops.ts";
import type { CylinderChart, EndPlane, RegionLoop, SectionSheet } from "./types.ts";

type Loops = readonly (readonly DrawnPiece[])[];

/** What the sheets of one section do not share. */
export type Body = Pick<
  SectionSheet,
  "chart" | "ends" | "loops" | "planLoops" | "planBox" | "planPieces" | "borders" | "cover"
>;

/** The surface of a section: its whole chart, and the stretches of its profile between corners. */
export interface DividedSurface {
  readonly whole: CylinderChart;
  readonly frame: Parameters<typeof cylinderChart>[1];
  readonly stretches: readonly (readonly CurvePiece[])[];
  readonly corners: readonly Corner[];
  readonly neutralMm: number;
  readonly fineness: Fineness;
}

/**
 * The bodies that a section falls into: one for each stretch of its profile; where openings cut one of these apart, one
 * for each of its islands. Front to rear, then from inboard to outboard.
 */
export function sectionBodies(
  surface: DividedSurface,
  loops: Loops,
  opened: OpenedSection | undefined,
): readonly Body[] {
  const traced = surface.stretches.map((_, i) => traceStretch(surface, i, loops, opened));
  if (!opened) {
    const plan = planOf(loops);
    return traced.map(({ chart, ends, region }) => ({ chart, ends, loops: region, ...plan }));
  }
  const isDivided = traced.some((stretch) => stretch.isDivided);
  return traced.flatMap((stretch) =>
    isDivided ? dividedBodies(stretch, opened) : [openedBody(stretch, opened)],
  );
}

/** The region of a section between two profile corners. */
interface TracedStretch {
  readonly chart: CylinderChart;
  readonly region: readonly RegionLoop[];
  readonly ends: readonly EndPlane[];
  /** Whether openings make more pieces of it than the outline does. */
  readonly isDivided: boolean;
}

function traceStretch(
  { whole, frame, stretches, corners, neutralMm, fineness }: DividedSurface,
  index: number,
  drawn: Loops,
  opened: OpenedSection | undefined,
): TracedStretch {
  const chart = cylinderChart(stretches[index] ?? [], frame);
  const [before, after] = [corners[index - 1], corners[index]];
  const limits: XiLimits = { ...(before && { from: before }), ...(after && { to: after }) };
  const trace = (loops: Loops): readonly RegionLoop[] => {
    const areaMm2 = leastAreaMm2(loops, (polygon) => clipToXi(chart, polygon, limits));
    const limitsOf = chordLimits(loops, Math.max(areaMm2, SLIVER_MM2), fineness);
    return traceLoops(chart, loops, limits, { neutralMm, limitsOf });
  };
  const region = trace(opened ? meetWallsAt(chart, opened, neutralMm) : drawn);
  const count = opened ? countIslands(region) : 1;
  const isDivided = count > 1 && count > countIslands(trace(drawn));
  const ends = [
    ...(before ? [mitrePlane(whole, before, -1)] : []),
    ...(after ? [mitrePlane(whole, after, 1)] : []),
  ];
  return { chart, region, ends, isDivided };
}

/** Areas of sheets smaller than this need not be right to a part in a million. */
const SLIVER_MM2 = 1000;

/** The area of the smallest sheet that may come of loops, slivers apart: of one outline, what its holes leave of it. */
function leastAreaMm2(loops: Loops, clip: (polygon: readonly PlanPoint[]) => readonly PlanPoint[]): number {
  const outlines = loops.filter((loop) => enclosedAreaMm2(loop) > 0);
  const areas = outlines.map((loop) => planAreaMm2([clip(planPolygon(loop))]));
  const large = areas.filter((areaMm2) => areaMm2 > SLIVER_MM2);
  if (large.length !== 1) return large.length === 0 ? 0 : Math.min(...large);
  return planAreaMm2(loops.map((loop) => clip(planPolygon(loop))));
}

function planOf(loops: Loops): Pick<Body, "planLoops" | "planBox" | "planPieces"> {
  const planLoops = loops.map(planPolygon);
  const planPieces = loops.flat().map(({ piece }) => piece);
  return { planLoops, planBox: boxOf(planLoops.flat()), planPieces };
}

function openedBody({ chart, ends, region }: TracedStretch, opened: OpenedSection): Body {
  const cover = { ...coverOf(opened), own: [], others: [] };
  const borders = bordersOfLoops(region);
  return { chart, ends, loops: region, ...planOf(opened.loops), borders, cover };
}

function dividedBodies({ chart, ends, region }: TracedStretch, opened: OpenedSection): readonly Body[] {
  const islands = islandsOf(region);
  return islands.map(({ loops, planLoops }): Body => {
    const others = islands.flatMap((other) => (other.loops === loops ? [] : other.planLoops));
    const borders = bordersOfLoops(loops);
    return {
      chart,
      ends,
      loops,
      planLoops,
      planBox: boxOf(planLoops.flat()),
      planPieces: borders.map(({ piece }) => piece),
      borders,
      cover: { ...coverOf(opened), own: planLoops, others },
    };
  });
}

const coverOf = ({ squareLoops, uprightLoops }: OpenedSection) => ({
  square: squareLoops.map(planPolygon),
  upright: uprightLoops.map(planPolygon),
});

const planPolygon = (loop: readonly DrawnPiece[]): readonly PlanPoint[] =>
  polygonOf(loop, planParameters, pointOnPiece);

/** How exactly a plan polygon knows where its sheet ends: under what anybody can mark, and few corners to walk. */
const CONTAINING_ERROR_MM = 0.02;

const planParameters = (piece: CurvePiece): readonly number[] =>
  flattenPiece(piece, { chordErrorMm: CONTAINING_ERROR_MM, turnRad: 0.2 });
