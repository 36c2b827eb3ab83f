import type { Rest } from "./resting-face.ts";
import type { TopPoint } from "./top-stretches.ts";

/** Foam is followed across a board where at least so much of it lies on the board, mm. */
const LEAST_SEEN_MM = 1;
/** The border of a sheet is found to this, mm; a slope taken over `LEAST_SEEN_MM` hardly feels it. */
const BORDER_MM = 1e-4;

/**
 * Height above ground that a rib's far face needs at a point of its top. Where no sheet reaches the far face, the
 * sheet goes on as it lies: as at the nearest place along the rib where it does reach, if that is no farther off
 * than the board is thick; else by its slope over the part of the board that it covers. `over(offset, along)` is
 * what rests at an offset from the station plane toward the far face.
 */
export function farFace(
  top: readonly TopPoint[],
  over: (offsetMm: number, alongMm: number) => Rest | undefined,
  thicknessMm: number,
): (point: TopPoint) => number {
  const riseAt = (alongMm: number): number | undefined => {
    const here = over(0, alongMm);
    const far = over(thicknessMm, alongMm);
    return here === undefined || far === undefined ? undefined : far.zMm - here.zMm;
  };
  const riseAlong = (point: TopPoint): (Rise & { readonly awayMm: number }) | undefined => {
    const isReached = (alongMm: number) => riseAt(alongMm) !== undefined;
    const reached = nearestFirst(top, point).find(({ atMm }) => isReached(atMm));
    if (reached === undefined) return undefined;
    const placeMm = lastPlace(reached.atMm, point.atMm, isReached);
    return { riseMm: riseAt(placeMm) ?? 0, awayMm: Math.abs(placeMm - point.atMm) };
  };
  const riseAcross = ({ atMm, zMm }: TopPoint): Rise | undefined => {
    const seenMm = lastPlace(0, thicknessMm, (offsetMm) => over(offsetMm, atMm) !== undefined);
    const rest = seenMm < LEAST_SEEN_MM ? undefined : over(seenMm, atMm);
    return rest === undefined ? undefined : { riseMm: ((rest.zMm - zMm) * thicknessMm) / seenMm };
  };
  return (point) => {
    const far = over(thicknessMm, point.atMm);
    if (far !== undefined) return far.zMm;
    const along = riseAlong(point);
    const isNear = along !== undefined && along.awayMm <= thicknessMm;
    const rise = isNear ? along : (riseAcross(point) ?? along);
    return point.zMm + (rise?.riseMm ?? 0);
  };
}

/** How much higher the sheet lies over the far face. */
interface Rise {
  readonly riseMm: number;
}

const nearestFirst = (top: readonly TopPoint[], { atMm, partId }: TopPoint): TopPoint[] =>
  top
    .filter((other) => other.partId === partId)
    .sort((a, b) => Math.abs(a.atMm - atMm) - Math.abs(b.atMm - atMm));

/** The last place on the way to another one up to which something holds; it holds at the start. */
function lastPlace(fromMm: number, toMm: number, holds: (placeMm: number) => boolean): number {
  let [last, next] = [fromMm, toMm];
  while (Math.abs(next - last) > BORDER_MM) {
    const middle = (last + next) / 2;
    if (holds(middle)) last = middle;
    else next = middle;
  }
  return last;
}
