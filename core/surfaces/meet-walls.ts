import { derivativeOnPiece, pointOnPiece, trimPiece } from "../curves/index.ts";
import { at, cross2, length2, subtract2, type Vec2 } from "../foundation/index.ts";
import { normalAtPlace, placeOfXi, xiOfPlan } from "./cylinder-chart.ts";
import type { DrawnPiece } from "./drawn-loops.ts";
import { footVelocity } from "./plumb-walls.ts";
import type { CylinderChart } from "./types.ts";

/**
 * The loops of a cut section as they meet at a depth: on a leaning sheet a square edge and an upright wall that meet
 * on the air side part inside the foam, by the depth times the lean. Each such corner moves along both edges to where
 * the face at that depth has it; edges are trimmed, or carried on, to end there. Where they do not meet nearby the
 * corner stays as it was drawn.
 */
export function meetWallsAt(
  chart: CylinderChart,
  loops: readonly (readonly DrawnPiece[])[],
  depthMm: number,
): readonly (readonly DrawnPiece[])[] {
  if (depthMm === 0) return loops;
  return loops.map((loop) => {
    const met = [...loop];
    loop.forEach((_, i) => {
      const next = (i + 1) % loop.length;
      const [before, after] = [at(met, i), at(met, next)];
      if (next === i || before.wall === after.wall) return;
      const corner = cornerAtDepth(chart, before, after, depthMm);
      if (!corner) return;
      met[i] = endedAt(before, corner.before);
      met[next] = begunAt(after, corner.after);
    });
    return met;
  });
}

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
