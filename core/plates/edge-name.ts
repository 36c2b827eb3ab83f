import type { Vec2 } from "../foundation/index.ts";

/**
 * What an edge of a counter-clockwise outline is called: the builder's own name, else the side that it looks to. Its
 * outward normal is its direction turned a quarter clockwise.
 */
export function edgeName(typed: string | undefined, from: Vec2, to: Vec2): string {
  if (typed !== undefined && typed.trim() !== "") return typed.trim();
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  if (Math.abs(dy) > Math.abs(dx)) return dy > 0 ? "rear edge" : "front edge";
  return dx > 0 ? "inner edge" : "outer edge";
}
