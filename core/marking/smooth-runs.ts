import { at, type FlatPoint } from "../foundation/index.ts";
import type { FlatLoop } from "../patterns/index.ts";

/** A turn above this is a corner to the eye and to a batten: 5°. */
const CORNER_TANGENT = Math.tan((5 * Math.PI) / 180);
/** Where two edges meet, a turn above this is a corner: well over the turn of one chord of a smooth edge. */
const EDGE_CORNER_TANGENT = Math.tan(0.01);

/** A stretch of a loop without corners inside: a batten can lie along it. */
export interface SmoothRun {
  readonly points: readonly FlatPoint[];
}

/**
 * A loop taken apart at its corners (a turn over 5°, or two edges that do not run on into each other), in loop
 * order. A loop without corners is one run that ends where it starts, at its least u.
 */
export function smoothRuns(loop: FlatLoop): SmoothRun[] {
  const vertices = verticesOf(loop);
  const count = vertices.length;
  if (count < 3) return [];
  const corners = vertices.flatMap((vertex, i) => {
    const most = vertex.startsEdge ? EDGE_CORNER_TANGENT : CORNER_TANGENT;
    const [before, after] = [at(vertices, i - 1).point, at(vertices, (i + 1) % count).point];
    return turnsMore(before, vertex.point, after, most) ? [i] : [];
  });
  const starts = corners.length > 0 ? corners : [leastU(vertices)];
  return starts.map((start, k) => {
    const end = at(starts, (k + 1) % starts.length);
    const length = end > start ? end - start : end - start + count;
    const points = Array.from({ length: length + 1 }, (_, i) => at(vertices, (start + i) % count).point);
    return { points };
  });
}

/** A loop as one run, corners and all, from its least u back there. */
export function wholeRun(loop: FlatLoop): SmoothRun {
  const vertices = verticesOf(loop);
  const start = leastU(vertices);
  const points = vertices.map((_, i) => at(vertices, (start + i) % vertices.length).point);
  return { points: [...points, ...points.slice(0, 1)] };
}

interface Vertex {
  readonly point: FlatPoint;
  readonly startsEdge: boolean;
}

function verticesOf(loop: FlatLoop): Vertex[] {
  return loop.edges.flatMap(({ points }) =>
    points.slice(0, -1).map((point, i): Vertex => ({ point, startsEdge: i === 0 })),
  );
}

/** Whether a corner turns by more than the angle with the given tangent, either way. */
function turnsMore(before: FlatPoint, corner: FlatPoint, after: FlatPoint, tangent: number): boolean {
  const [u1, v1] = [corner.u - before.u, corner.v - before.v];
  const [u2, v2] = [after.u - corner.u, after.v - corner.v];
  return Math.abs(u1 * v2 - v1 * u2) > tangent * (u1 * u2 + v1 * v2);
}

const leastU = (vertices: readonly Vertex[]): number =>
  vertices.reduce((best, { point }, i) => (point.u < at(vertices, best).point.u ? i : best), 0);
