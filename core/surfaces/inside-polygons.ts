import { at, type PlanPoint } from "../foundation/index.ts";

type Polygons = readonly (readonly PlanPoint[])[];

/** Even-odd test of a point against polygons; a point on the border may fall either way. */
export function polygonsContain(polygons: Polygons, p: PlanPoint): boolean {
  let inside = false;
  for (const polygon of polygons) {
    let before = polygon[polygon.length - 1];
    for (const corner of polygon) {
      if (before && corner.y > p.y !== before.y > p.y) {
        const x = before.x + ((p.y - before.y) / (corner.y - before.y)) * (corner.x - before.x);
        if (p.x < x) inside = !inside;
      }
      before = corner;
    }
  }
  return inside;
}

/** So many bands part any tray's sides well enough, and keep long sides from standing in too many. */
const MOST_BANDS = 100;

/** One side of a polygon, from corner to corner. */
interface Side {
  readonly from: PlanPoint;
  readonly to: PlanPoint;
}

/**
 * Polygons made ready for many tests: as `polygonsContain`. The sides are sorted into bands of equal height, so that
 * a test meets only those beside the point.
 */
export function insideOf(polygons: Polygons): (p: PlanPoint) => boolean {
  const sides = polygons.flatMap((polygon) =>
    polygon.map((to, i): Side => ({ from: at(polygon, i - 1), to })),
  );
  const leastY = sides.reduce((least, { to }) => Math.min(least, to.y), Number.POSITIVE_INFINITY);
  const mostY = sides.reduce((most, { to }) => Math.max(most, to.y), Number.NEGATIVE_INFINITY);
  const count = Math.min(sides.length, MOST_BANDS);
  const bandsPerMm = count / (mostY - leastY);
  const bandOf = (y: number): number => Math.floor((y - leastY) * bandsPerMm);
  const bands: Side[][] = Array.from({ length: count + 1 }, () => []);
  for (const side of sides) {
    const [low, high] = [Math.min(side.from.y, side.to.y), Math.max(side.from.y, side.to.y)];
    for (let band = bandOf(low); band <= bandOf(high); band++) bands[band]?.push(side);
  }
  return (p) => {
    let inside = false;
    for (const { from, to } of bands[bandOf(p.y)] ?? []) {
      if (to.y > p.y !== from.y > p.y) {
        const x = from.x + ((p.y - from.y) / (to.y - from.y)) * (to.x - from.x);
        if (p.x < x) inside = !inside;
      }
    }
    return inside;
  };
}
