import type { PlanPoint } from "../../foundation/index.ts";
import type { RigidFit } from "./types.ts";

/** How a plan point stands off: up is positive. */
export interface OffPoint {
  readonly at: PlanPoint;
  readonly offMm: number;
}

/** Points that spread less than this in one direction say nothing of a slope in it, mm. */
const LEAST_SPREAD_MM = 50;

/**
 * The plane that fits what points stand off best (least squares, the usual normal equations about their middle): all of a
 * tray that stands too high or is tilted as a whole. Of points in one line no slope across it is told.
 */
export function fitRigid(points: readonly OffPoint[]): RigidFit {
  const mean = (of: (point: OffPoint) => number) =>
    points.length === 0 ? 0 : points.reduce((sum, point) => sum + of(point), 0) / points.length;
  const [x0, y0, off0] = [mean(({ at }) => at.x), mean(({ at }) => at.y), mean(({ offMm }) => offMm)];
  const sum = (of: (dx: number, dy: number, off: number) => number) =>
    points.reduce((total, { at, offMm }) => total + of(at.x - x0, at.y - y0, offMm - off0), 0);
  const [xx, xy, yy] = [sum((x) => x * x), sum((x, y) => x * y), sum((_x, y) => y * y)];
  const [xo, yo] = [sum((x, _y, off) => x * off), sum((_x, y, off) => y * off)];
  const spread = points.length * LEAST_SPREAD_MM ** 2;
  const determinant = xx * yy - xy * xy;
  const isPlane = determinant > 0.01 * xx * yy && xx > spread && yy > spread;
  const slopeX = isPlane ? (xo * yy - yo * xy) / determinant : xx > spread && xx >= yy ? xo / xx : 0;
  const slopeY = isPlane ? (yo * xx - xo * xy) / determinant : yy > spread && yy > xx ? yo / yy : 0;
  return { liftMm: off0 - slopeX * x0 - slopeY * y0, slopeX, slopeY };
}
