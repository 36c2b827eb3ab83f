import {
  derivativeOnPiece,
  endOfPiece,
  nearestOnPiece,
  pointOnPiece,
  startOfPiece,
  trimPiece,
} from "../curves/index.ts";
import { at, cross2, distance2, length2, subtract2, type Vec2 } from "../foundation/index.ts";
import { cutAtFeet } from "./cut-at-feet.ts";
import { normalAtPlace, placeOfXi, xiOfPlan } from "./cylinder-chart.ts";
import type { DrawnPiece } from "./drawn-loops.ts";
import type { OpenedSection } from "./open-section.ts";
import { footVelocity } from "./plumb-walls.ts";
import type { CylinderChart } from "./types.ts";

type Loops = readonly (readonly DrawnPiece[])[];

/**
 * The loops of an opened section as they meet at a depth: on a leaning sheet a square edge and an upright wall that
 * meet on the air side part inside the foam, by the depth times the lean. Each such corner moves along both edges to
 * where the face at that depth has it; edges are trimmed, or carried on, to end there. Where a corner moves off its
 * edges the loops are cut anew at that depth.
 */
export function meetWallsAt(
  chart: CylinderChart,
  { loops, squareLoops, uprightLoops }: Pick<OpenedSection, "loops" | "squareLoops" | "uprightLoops">,
  depthMm: number,
): Loops {
  if (depthMm === 0 || uprightLoops.length === 0) return loops;
  const drawn = [...squareLoops, ...uprightLoops].flat();
  const met = meetCorners(chart, loops, drawn, depthMm);
  if (met.missed === 0) return met.loops;
  return meetCorners(chart, cutAtFeet(chart, squareLoops, uprightLoops, depthMm), drawn, depthMm).loops;
}

/** Loops with their corners moved to where edges meet at a depth, and how many corners could not be. */
function meetCorners(
  chart: CylinderChart,
  loops: Loops,
  drawn: readonly DrawnPiece[],
  depthMm: number,
): { readonly loops: Loops; readonly missed: number } {
  let missed = 0;
  const met = loops.map((loop) => {
    const moved = [...loop];
    loop.forEach((_, i) => {
      const next = (i + 1) % loop.length;
      const [before, after] = [at(moved, i), at(moved, next)];
      if (next === i || before.wall === after.wall) return;
      const corner = cornerAtDepth(chart, before, after, depthMm);
      if (!corner || !isOnDrawn(before, corner.before, drawn) || !isOnDrawn(after, corner.after, drawn)) {
        missed++;
        return;
      }
      moved[i] = endedAt(before, corner.before);
      moved[next] = begunAt(after, corner.after);
    });
    return moved;
  });
  return { loops: met, missed };
}

/**
 * Whether an edge carried on past its own end still follows what was drawn, or was drawn to end there: an opening may
 * share a stretch with the sheet's edge, and is then open to it at every depth.
 */
function isOnDrawn(
  { piece, reversed, edgeId }: DrawnPiece,
  share: number,
  drawn: readonly DrawnPiece[],
): boolean {
  if (share >= 0 && share <= 1) return true;
  const point = pointOnPiece(piece, reversed ? 1 - share : share);
  const end = pointOnPiece(piece, share > 1 === reversed ? 0 : 1);
  return drawn.some(
    (one) =>
      one.edgeId === edgeId &&
      (nearestOnPiece(one.piece, point).distanceMm < ON_EDGE_MM ||
        distance2(startOfPiece(one.piece), end) < ON_EDGE_MM ||
        distance2(endOfPiece(one.piece), end) < ON_EDGE_MM),
  );
}

const ON_EDGE_MM = 1e-6;

/** Where two edges meet at a depth: the share of the way along each. */
interface Corner {
  readonly before: number;
  readonly after: number;
}

/** A corner has moved by no more than this many depths, or the edges do not meet. */
const MOST_DEPTHS = 4;

function cornerAtDepth(
  chart: CylinderChart,
  before: DrawnPiece,
  after: DrawnPiece,
  depthMm: number,
): Corner | undefined {
  let [s, t] = [1, 0];
  const start = walkAt(chart, before, s, depthMm).point;
  for (let i = 0; i < 30; i++) {
    const [a, b] = [walkAt(chart, before, s, depthMm), walkAt(chart, after, t, depthMm)];
    const gap = subtract2(b.point, a.point);
    const size = cross2(a.velocity, b.velocity);
    if (Math.abs(size) < LEAST_SINE * length2(a.velocity) * length2(b.velocity)) return undefined;
    const [stepS, stepT] = [cross2(gap, b.velocity) / size, cross2(gap, a.velocity) / size];
    s += stepS;
    t += stepT;
    const movedMm = length2(subtract2(walkAt(chart, before, s, depthMm).point, start));
    if (!(movedMm <= MOST_DEPTHS * Math.abs(depthMm)) || s <= 0 || t >= 1) return undefined;
    if (Math.abs(stepS) + Math.abs(stepT) <= 1e-14) break;
  }
  return { before: s, after: t };
}

/** Edges that meet at less than this are not moved along each other. */
const LEAST_SINE = 0.02;

/** A point of an edge in plan at a depth, at a share of the way along it, and its velocity. */
function walkAt(
  chart: CylinderChart,
  { piece, reversed, wall }: DrawnPiece,
  share: number,
  depthMm: number,
): { readonly point: Vec2; readonly velocity: Vec2 } {
  const t = reversed ? 1 - share : share;
  const [x, y] = pointOnPiece(piece, t);
  const slope = derivativeOnPiece(piece, t);
  const [dx, dy]: Vec2 = reversed ? [-slope[0], -slope[1]] : slope;
  if (wall === "upright") return { point: [x, y], velocity: [dx, dy] };
  const place = placeOfXi(chart, xiOfPlan(chart, { x, y }));
  const normal = normalAtPlace(chart, place);
  const { turn } = footVelocity(chart, place, [dx, dy], 0);
  return {
    point: [x + depthMm * normal.x, y + depthMm * normal.y],
    velocity: [dx + depthMm * turn.x, dy + depthMm * turn.y],
  };
}

const endedAt = (drawn: DrawnPiece, share: number): DrawnPiece => ({
  ...drawn,
  piece: drawn.reversed ? trimPiece(drawn.piece, 1 - share, 1) : trimPiece(drawn.piece, 0, share),
});

const begunAt = (drawn: DrawnPiece, share: number): DrawnPiece => ({
  ...drawn,
  piece: drawn.reversed ? trimPiece(drawn.piece, 0, 1 - share) : trimPiece(drawn.piece, share, 1),
});
