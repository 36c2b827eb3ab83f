import { at, type FlatPoint } from "../foundation/index.ts";
import { type FlatLoop, loopAreaMm2, polygonOfLoop } from "../patterns/index.ts";

/** Less than this is rounding, not foam: a square of a thousandth of a millimetre. */
const NOTHING_MM2 = 1e-6;

/** One connected piece of a flat: its outline (counter-clockwise) first, then its holes (clockwise). */
export type Island = readonly FlatLoop[];

/**
 * Loops sorted into connected pieces: one island for each outline, in the order given, with the holes that
 * lie in it (in the smallest outline around them). Loops without area are dropped.
 */
export function groupIslands(loops: readonly FlatLoop[]): Island[] {
  const measured = loops.map((loop) => ({ loop, areaMm2: loopAreaMm2(loop) }));
  const outlines = measured
    .filter(({ areaMm2 }) => areaMm2 > NOTHING_MM2)
    .map((outline) => ({ ...outline, holes: [] as FlatLoop[] }));
  for (const hole of measured.filter(({ areaMm2 }) => areaMm2 < -NOTHING_MM2)) {
    const corner = at(at(hole.loop.edges, 0).points, 0);
    const around = outlines.filter(
      (outline) => outlines.length === 1 || isInside(corner, polygonOfLoop(outline.loop)),
    );
    const [owner] = around.sort((a, b) => a.areaMm2 - b.areaMm2);
    owner?.holes.push(hole.loop);
  }
  return outlines.map(({ loop, holes }) => [loop, ...holes]);
}

/** Whether a point lies inside a polygon (crossings of a ray along u, even-odd). */
export function isInside(point: FlatPoint, polygon: readonly FlatPoint[]): boolean {
  let inside = false;
  let from = polygon[polygon.length - 1];
  for (const to of polygon) {
    if (from !== undefined && from.v > point.v !== to.v > point.v) {
      const u = from.u + ((point.v - from.v) / (to.v - from.v)) * (to.u - from.u);
      if (u > point.u) inside = !inside;
    }
    from = to;
  }
  return inside;
}
