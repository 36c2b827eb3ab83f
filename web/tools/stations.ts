/** The multiples of a step within a stretch, both ends included. */
export function marksBetween(fromMm: number, toMm: number, stepMm: number): readonly number[] {
  const first = Math.ceil(fromMm / stepMm);
  const count = Math.max(0, Math.min(5000, Math.floor(toMm / stepMm) - first + 1));
  return Array.from({ length: count }, (_, index) => (first + index) * stepMm);
}

/** Numbers on the ruler stand at least so far apart on the screen, px. */
export const LEAST_STRONG_PX = 56;
