import { type FlatPoint, type SpacePoint, toPlan } from "../foundation/index.ts";
import { type Part, partPlaces } from "../patterns/index.ts";
import type { Sheet } from "../surfaces/index.ts";

/** Steps of Newton's method at most, and when it is near enough, mm. */
const MOST_STEPS = 30;
const NEAR_MM = 0.01;

/** Where places of the tray lie in a part's flat pattern, found by their plan; those that are not found are left out. */
export function footOf(
  sheets: readonly Sheet[],
  part: Part,
  places: readonly SpacePoint[],
): readonly FlatPoint[] {
  const toSpace = partPlaces(sheets, part);
  const points = part.loops.flatMap(({ edges }) => edges.flatMap((edge) => edge.points));
  if (!toSpace || points.length === 0) return [];
  const planAt = (flat: FlatPoint) => toPlan(toSpace(flat, 0));
  const nearest = (place: SpacePoint): FlatPoint | undefined => {
    let best: FlatPoint | undefined;
    let least = Number.POSITIVE_INFINITY;
    for (const point of points) {
      const { x, y } = planAt(point);
      const away = Math.hypot(x - place.x, y - place.y);
      if (away < least) [best, least] = [point, away];
    }
    return best;
  };
  let start: FlatPoint | undefined;
  return places.flatMap((place) => {
    const from = start ?? nearest(place);
    const found = from && newton(planAt, place, from);
    if (found) start = found;
    return found ? [found] : [];
  });
}

function newton(
  planAt: (flat: FlatPoint) => { readonly x: number; readonly y: number },
  place: SpacePoint,
  from: FlatPoint,
): FlatPoint | undefined {
  let flat = from;
  for (let step = 0; step < MOST_STEPS; step++) {
    const here = planAt(flat);
    const [dx, dy] = [place.x - here.x, place.y - here.y];
    if (Math.hypot(dx, dy) < NEAR_MM) return flat;
    const [xu, yu] = slopeAlong(planAt, flat, { u: 1, v: 0 });
    const [xv, yv] = slopeAlong(planAt, flat, { u: 0, v: 1 });
    const size = xu * yv - yu * xv;
    if (Math.abs(size) < 1e-9) return undefined;
    flat = { u: flat.u + (dx * yv - dy * xv) / size, v: flat.v + (dy * xu - dx * yu) / size };
  }
  return undefined;
}

/** How the plan moves with the flat in a direction; at the end of a sheet, where it stops, it is looked at backward. */
function slopeAlong(
  planAt: (flat: FlatPoint) => { readonly x: number; readonly y: number },
  { u, v }: FlatPoint,
  by: FlatPoint,
): readonly [number, number] {
  const here = planAt({ u, v });
  const ahead = planAt({ u: u + by.u, v: v + by.v });
  const forward = [ahead.x - here.x, ahead.y - here.y] as const;
  if (Math.hypot(...forward) > 1e-6) return forward;
  const behind = planAt({ u: u - by.u, v: v - by.v });
  return [here.x - behind.x, here.y - behind.y];
}
