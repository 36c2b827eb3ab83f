import type { Vec2 } from "../../core/foundation/index.ts";
import type { SceneEdge, SceneLine } from "../tools/index.ts";
import { type Transform, toPx } from "./viewport.ts";

/** The points of a drawn line in px, end to end, as the canvas takes them. */
export function linePx(transform: Transform, points: readonly Vec2[]): number[] {
  const px: number[] = [];
  for (const point of points) {
    const [xPx, yPx] = toPx(transform, point);
    if (Number.isFinite(xPx) && Number.isFinite(yPx)) px.push(xPx, yPx);
  }
  return px;
}

/** The points of an edge, end to end. */
export const pointsOfEdge = (edge: SceneEdge): readonly Vec2[] =>
  edge.stretches.flatMap((stretch, index) => (index === 0 ? stretch.points : stretch.points.slice(1)));

const pointsOfLines = new WeakMap<SceneLine, readonly Vec2[]>();

/** The points of a whole line, end to end; put together once for each. */
export function pointsOfLine(line: SceneLine): readonly Vec2[] {
  const known = pointsOfLines.get(line);
  if (known) return known;
  const points = line.edges.flatMap(pointsOfEdge);
  pointsOfLines.set(line, points);
  return points;
}

/** The points of the image on the other side of the centre line. */
export const imageOf = (points: readonly Vec2[]): readonly Vec2[] => points.map(([x, y]) => [x, -y]);

const spotsOfPoints = new WeakMap<readonly Vec2[], Vec2>();

/** A spot well inside a closed line for its label: the middle of its area, or of its nodes; found once for each. */
export function labelSpot(points: readonly Vec2[]): Vec2 {
  const known = spotsOfPoints.get(points);
  if (known) return known;
  const spot = middleOfArea(points);
  spotsOfPoints.set(points, spot);
  return spot;
}

function middleOfArea(points: readonly Vec2[]): Vec2 {
  let area = 0;
  let x = 0;
  let y = 0;
  points.forEach((from, index) => {
    const to = points[(index + 1) % points.length] ?? from;
    const cross = from[0] * to[1] - to[0] * from[1];
    area += cross;
    x += (from[0] + to[0]) * cross;
    y += (from[1] + to[1]) * cross;
  });
  if (Math.abs(area) < 1e-6) return points[Math.floor(points.length / 2)] ?? [0, 0];
  return [x / (3 * area), y / (3 * area)];
}
