import type { Vec2 } from "../foundation/index.ts";
import type { Stroke } from "./contour.ts";

/** An elliptical arc as path data gives it. */
export interface EndpointArc {
  readonly radii: Vec2;
  readonly rotationRad: number;
  readonly isLarge: boolean;
  readonly isPositive: boolean;
}

/**
 * The arc between two points by its centre (SVG 1.1 appendix F.6.5); radii too small to reach are enlarged as far
 * as they must (F.6.6), a radius of 0 makes it a line.
 */
export function arcStroke(from: Vec2, to: Vec2, arc: EndpointArc): Stroke {
  const [cos, sin] = [Math.cos(arc.rotationRad), Math.sin(arc.rotationRad)];
  const half: Vec2 = [(from[0] - to[0]) / 2, (from[1] - to[1]) / 2];
  const x1 = cos * half[0] + sin * half[1];
  const y1 = -sin * half[0] + cos * half[1];
  const given = [Math.abs(arc.radii[0]), Math.abs(arc.radii[1])] as const;
  if (given[0] === 0 || given[1] === 0) return { kind: "line", from, to };
  const reach = Math.sqrt((x1 / given[0]) ** 2 + (y1 / given[1]) ** 2);
  const [rx, ry] = [given[0] * Math.max(1, reach), given[1] * Math.max(1, reach)];
  const along = (rx * y1) ** 2 + (ry * x1) ** 2;
  const root = along === 0 ? 0 : Math.sqrt(Math.max(0, ((rx * ry) ** 2 - along) / along));
  const factor = arc.isLarge === arc.isPositive ? -root : root;
  const [cx, cy] = [(factor * rx * y1) / ry, (-factor * ry * x1) / rx];
  const startRad = Math.atan2((y1 - cy) / ry, (x1 - cx) / rx);
  const endRad = Math.atan2((-y1 - cy) / ry, (-x1 - cx) / rx);
  return {
    kind: "arc",
    from,
    to,
    centre: [cos * cx - sin * cy + (from[0] + to[0]) / 2, sin * cx + cos * cy + (from[1] + to[1]) / 2],
    u: [rx * cos, rx * sin],
    v: [-ry * sin, ry * cos],
    startRad,
    sweepRad: sweepFrom(startRad, endRad, arc.isPositive),
  };
}

function sweepFrom(startRad: number, endRad: number, isPositive: boolean): number {
  const turnRad = 2 * Math.PI;
  const sweep = endRad - startRad;
  if (isPositive) return sweep < 0 ? sweep + turnRad : sweep;
  return sweep > 0 ? sweep - turnRad : sweep;
}
