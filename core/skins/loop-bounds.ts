import type { PlanPoint } from "../foundation/index.ts";

/** The box around loops of a picture, mm; undefined for none. */
export function boundsOfLoops(
  loops: readonly (readonly PlanPoint[])[],
):
  | { readonly left: number; readonly right: number; readonly bottom: number; readonly top: number }
  | undefined {
  const points = loops.flat();
  if (points.length === 0) return undefined;
  let [left, right, bottom, top] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const { x, y } of points) {
    left = Math.min(left, x);
    right = Math.max(right, x);
    bottom = Math.min(bottom, y);
    top = Math.max(top, y);
  }
  return { left, right, bottom, top };
}
