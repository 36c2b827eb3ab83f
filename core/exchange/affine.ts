import type { Vec2 } from "../foundation/index.ts";

/** x' = a x + c y + e, y' = b x + d y + f: six numbers in the order of SVG 1.1 §7.4. */
export type Affine = readonly [a: number, b: number, c: number, d: number, e: number, f: number];

export const IDENTITY: Affine = [1, 0, 0, 1, 0, 0];

/** The change that does `inner` first and `outer` then. */
export function after(outer: Affine, inner: Affine): Affine {
  const [a, b, c, d, e, f] = inner;
  const [x, y] = [turned(outer, [a, b]), turned(outer, [c, d])];
  const origin = moved(outer, [e, f]);
  return [x[0], x[1], y[0], y[1], origin[0], origin[1]];
}

/** Where a point comes to lie. */
export const moved = ([a, b, c, d, e, f]: Affine, [x, y]: Vec2): Vec2 => [
  a * x + c * y + e,
  b * x + d * y + f,
];

/** What becomes of a direction: as a point, without the shift. */
export const turned = ([a, b, c, d]: Affine, [x, y]: Vec2): Vec2 => [a * x + c * y, b * x + d * y];
