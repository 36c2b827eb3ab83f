import { at, type PlanPoint } from "../foundation/index.ts";
import { xiOfPlan } from "./cylinder-chart.ts";
import type { XiLimits } from "./trace-loops.ts";
import type { CylinderChart } from "./types.ts";

/** The part of a plan polygon between two corner rulings; where it falls in two they stay joined by a line there and back. */
export function clipToXi(
  chart: CylinderChart,
  loop: readonly PlanPoint[],
  { from, to }: XiLimits,
): readonly PlanPoint[] {
  const behind = from ? clipPolygon(loop, (p) => xiOfPlan(chart, p) - from.xi) : loop;
  return to ? clipPolygon(behind, (p) => to.xi - xiOfPlan(chart, p)) : behind;
}

/** What is left of a polygon where a linear function of the plan is positive (Sutherland and Hodgman, 1974). */
function clipPolygon(
  polygon: readonly PlanPoint[],
  insideBy: (p: PlanPoint) => number,
): readonly PlanPoint[] {
  return polygon.flatMap((p, i) => {
    const next = at(polygon, (i + 1) % polygon.length);
    const [a, b] = [insideBy(p), insideBy(next)];
    const kept = a >= 0 ? [p] : [];
    if (a >= 0 === b >= 0) return kept;
    const t = a / (a - b);
    return [...kept, { x: p.x + (next.x - p.x) * t, y: p.y + (next.y - p.y) * t }];
  });
}

/** The least and the most corner of the box around points. */
export function boxOf(points: readonly PlanPoint[]): readonly [PlanPoint, PlanPoint] {
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
  return [
    { x: Math.min(...xs), y: Math.min(...ys) },
    { x: Math.max(...xs), y: Math.max(...ys) },
  ];
}

/** Area of plan polygons, holes taken off. */
export function planAreaMm2(polygons: readonly (readonly PlanPoint[])[]): number {
  let twice = 0;
  for (const polygon of polygons) {
    for (const [i, p] of polygon.entries()) {
      const q = at(polygon, (i + 1) % polygon.length);
      twice += p.x * q.y - q.x * p.y;
    }
  }
  return Math.abs(twice) / 2;
}
