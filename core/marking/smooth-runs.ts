import { at, type FlatPoint } from "../foundation/index.ts";
import { type FlatLoop, polygonOfLoop } from "../patterns/index.ts";

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
  const points = polygonOfLoop(loop);
  if (points.length < 3) return [];
  const corners = cornersOf(points, startsOfEdges(loop));
  const starts = corners.length > 0 ? corners : [leastU(points)];
  return starts.map((start, k) => ({ points: walk(points, start, at(starts, (k + 1) % starts.length)) }));
}

/** A loop as one run, corners and all, from its least u back there. */
export function wholeRun(loop: FlatLoop): SmoothRun {
  const points = polygonOfLoop(loop);
  const start = points.length > 0 ? leastU(points) : 0;
  return { points: walk(points, start, start) };
}

/** The points of a closed polygon from one to another or, where these are the same, all round. */
const walk = (points: readonly FlatPoint[], from: number, to: number): readonly FlatPoint[] =>
  to > from ? points.slice(from, to + 1) : [...points.slice(from), ...points.slice(0, to + 1)];

/** Which points of a closed polygon are corners; where an edge starts, less of a turn makes one. */
function cornersOf(points: readonly FlatPoint[], edgeStarts: ReadonlySet<number>): readonly number[] {
  const corners: number[] = [];
  let before = at(points, -1);
  points.forEach((point, i) => {
    const after = points[i + 1] ?? at(points, 0);
    const most = edgeStarts.has(i) ? EDGE_CORNER_TANGENT : CORNER_TANGENT;
    if (turnsMore(before, point, after, most)) corners.push(i);
    before = point;
  });
  return corners;
}

/** Which points of a loop begin an edge. */
function startsOfEdges({ edges }: FlatLoop): ReadonlySet<number> {
  const starts = new Set<number>();
  let index = 0;
  for (const { points } of edges) {
    starts.add(index);
    index += points.length - 1;
  }
  return starts;
}

/** Whether a corner turns by more than the angle with the given tangent, either way. */
function turnsMore(before: FlatPoint, corner: FlatPoint, after: FlatPoint, tangent: number): boolean {
  const [u1, v1] = [corner.u - before.u, corner.v - before.v];
  const [u2, v2] = [after.u - corner.u, after.v - corner.v];
  return Math.abs(u1 * v2 - v1 * u2) > tangent * (u1 * u2 + v1 * v2);
}

const leastU = (points: readonly FlatPoint[]): number =>
  points.reduce((best, { u }, i) => (u < at(points, best).u ? i : best), 0);
