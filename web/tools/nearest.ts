import { interpolate2, type Vec2 } from "../../core/foundation/index.ts";
import type { SceneEdge, SceneLine } from "./scene.ts";
import type { Place } from "./types.ts";

/** A place on a drawn edge: the point, the curve parameter of the edge there, and how far off it is, px. */
export interface OnEdge {
  readonly edge: SceneEdge;
  readonly at: Vec2;
  readonly t: number;
  readonly awayPx: number;
}

/** A place on a straight line, and how far off it is, px. */
export interface NearestPoint {
  readonly at: Vec2;
  readonly awayPx: number;
}

/** The place of a chord that looks nearest on the screen. */
export function nearestOnChord([from, to]: readonly [Vec2, Vec2], place: Place): NearestPoint {
  const at = interpolate2(from, to, alongChord(from, to, place));
  return { at, awayPx: awayPx(at, place.at, place.mmPerPx) };
}

/** How far two points of a view are apart on the screen, px. */
export const awayPx = (a: Vec2, b: Vec2, mmPerPx: Vec2): number =>
  Math.hypot((a[0] - b[0]) / mmPerPx[0], (a[1] - b[1]) / mmPerPx[1]);

/** The nearest place on a line's edges, within the pointer's reach; undefined when none is. */
export function nearestOnLine(line: SceneLine, place: Place): OnEdge | undefined {
  let best: OnEdge | undefined;
  for (const edge of line.edges) {
    const here = nearestOnEdge(edge, place);
    if (here && here.awayPx <= place.reachPx && (best === undefined || here.awayPx < best.awayPx))
      best = here;
  }
  return best;
}

function nearestOnEdge(edge: SceneEdge, place: Place): OnEdge | undefined {
  let best: OnEdge | undefined;
  for (const stretch of edge.stretches) {
    for (let index = 1; index < stretch.points.length; index += 1) {
      const from = stretch.points[index - 1];
      const to = stretch.points[index];
      const t0 = stretch.parameters[index - 1];
      const t1 = stretch.parameters[index];
      if (!from || !to || t0 === undefined || t1 === undefined) continue;
      const along = alongChord(from, to, place);
      const at = interpolate2(from, to, along);
      const away = awayPx(at, place.at, place.mmPerPx);
      if (best !== undefined && away >= best.awayPx) continue;
      const t = edge.ends ? alongChord(edge.ends[0], edge.ends[1], { ...place, at }) : t0 + (t1 - t0) * along;
      best = { edge, at, t, awayPx: away };
    }
  }
  return best;
}

/** The parameter, from 0 to 1, of the place on a chord that looks nearest on the screen. */
export function alongChord(from: Vec2, to: Vec2, { at, mmPerPx }: Pick<Place, "at" | "mmPerPx">): number {
  const dx = (to[0] - from[0]) / mmPerPx[0];
  const dy = (to[1] - from[1]) / mmPerPx[1];
  const squared = dx * dx + dy * dy;
  if (squared === 0) return 0;
  const along = (((at[0] - from[0]) / mmPerPx[0]) * dx + ((at[1] - from[1]) / mmPerPx[1]) * dy) / squared;
  return Math.min(1, Math.max(0, along));
}

/** Whether a point lies inside a closed line, by crossings counted along its drawn points. */
export function isInside(line: SceneLine, at: Vec2): boolean {
  if (!line.closed) return false;
  let inside = false;
  for (const edge of line.edges) {
    for (const { points } of edge.stretches) {
      for (let index = 1; index < points.length; index += 1) {
        const a = points[index - 1];
        const b = points[index];
        if (!a || !b || a[1] > at[1] === b[1] > at[1]) continue;
        if (at[0] < a[0] + ((b[0] - a[0]) * (at[1] - a[1])) / (b[1] - a[1])) inside = !inside;
      }
    }
  }
  return inside;
}
