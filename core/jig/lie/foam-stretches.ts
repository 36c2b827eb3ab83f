import { at, type PlanPoint, type SpacePoint } from "../../foundation/index.ts";

/** Where the foam ends is found to this share of a step. */
const BORDER_SHARE = 1 / 1024;

/** A place of the face that lies on the jig: space, in the jig's own attitude, and its upward normal. */
export interface FoamSpot extends SpacePoint {
  readonly normal: SpacePoint;
}

/** A stretch of a course where foam is, with both its ends, and which of them lie at an edge that runs along the course. */
export interface FoamStretch {
  readonly spots: readonly FoamSpot[];
  readonly endsAside: readonly [boolean, boolean];
}

/** A place of a course in plan; `isAside` where the sheet's edge runs away from it faster than it can follow. */
export interface CoursePoint extends PlanPoint {
  readonly isAside: boolean;
}

type FaceAt = (spot: PlanPoint) => FoamSpot | undefined;

/** The stretches of a course where foam is. */
export function foamStretches(course: readonly CoursePoint[], faceAt: FaceAt): readonly FoamStretch[] {
  const stretches: { spots: FoamSpot[]; endsAside: [boolean, boolean] }[] = [];
  let isOpen = false;
  for (const [i, place] of course.entries()) {
    const spot = faceAt(place);
    const before = course[i - 1];
    if (spot && !isOpen) {
      const first = before ? lastOn(faceAt, spot, before) : spot;
      stretches.push({ spots: first === spot ? [] : [first], endsAside: [place.isAside, false] });
    }
    const open = stretches[stretches.length - 1];
    if (spot) open?.spots.push(spot);
    else if (isOpen && open) {
      const last = at(open.spots, -1);
      const end = lastOn(faceAt, last, place);
      if (end !== last) open.spots.push(end);
      open.endsAside[1] = place.isAside;
    }
    isOpen = spot !== undefined;
  }
  return stretches.filter(({ spots }) => spots.length > 2);
}

/**
 * The spots of a line with one on every trim line that it runs past, and the numbers of the first and the last one on drawn
 * foam: there the foam ceases to be bent.
 */
export function withTrimLines(
  spots: readonly FoamSpot[],
  faceAt: FaceAt,
  isDrawn: (p: PlanPoint) => boolean,
): { readonly spots: readonly FoamSpot[]; readonly net: readonly [number, number] } {
  const drawn = spots.flatMap((spot, i) => (isDrawn(spot) ? [i] : []));
  const [first, last] = [drawn[0] ?? 0, drawn[drawn.length - 1] ?? spots.length - 1];
  const drawnAt: FaceAt = (p) => (isDrawn(p) ? faceAt(p) : undefined);
  const trim = (inside: number, outside: number): readonly FoamSpot[] => {
    const off = spots[outside];
    const on = at(spots, inside);
    const border = off ? lastOn(drawnAt, on, off) : on;
    return border === on ? [] : [border];
  };
  const [start, end] = [trim(first, first - 1), trim(last, last + 1)];
  return {
    spots: [
      ...spots.slice(0, first),
      ...start,
      ...spots.slice(first, last + 1),
      ...end,
      ...spots.slice(last + 1),
    ],
    net: [first, last + start.length + end.length],
  };
}

/** The last spot with foam on the way from one where it is to one where it is not. */
function lastOn(faceAt: FaceAt, on: FoamSpot, off: PlanPoint): FoamSpot {
  let last = on;
  let [inside, outside] = [0, 1];
  while (outside - inside > BORDER_SHARE) {
    const middle = (inside + outside) / 2;
    const spot = faceAt({ x: on.x + middle * (off.x - on.x), y: on.y + middle * (off.y - on.y) });
    if (spot) {
      inside = middle;
      last = spot;
    } else outside = middle;
  }
  return last;
}
