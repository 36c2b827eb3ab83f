import type { PaperPoint } from "./types.ts";

/** Points of a small picture that can be told apart, mm. */
const SMALL_PICTURE_MM = 0.1;

/** A line for a small picture: points nearer to the one before than `nearestMm` are left out, not the last. */
export function thin(
  points: readonly PaperPoint[],
  nearestMm: number = SMALL_PICTURE_MM,
): readonly PaperPoint[] {
  const kept: PaperPoint[] = [];
  points.forEach((p, i) => {
    const before = kept.at(-1);
    const isFar = before === undefined || Math.hypot(p.x - before.x, p.y - before.y) > nearestMm;
    if (isFar || i === points.length - 1) kept.push(p);
  });
  return kept;
}
