/** Steps that a ruler or a grid may have, mm. */
const STEPS_MM = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000] as const;

/** The smallest round step that keeps its marks this far apart on the screen. */
export function stepFor(pxPerMm: number, leastPx: number): number {
  return STEPS_MM.find((step) => step * pxPerMm >= leastPx) ?? 10_000;
}

/** The multiples of a step within a stretch, both ends included. */
export function marksBetween(fromMm: number, toMm: number, stepMm: number): readonly number[] {
  const first = Math.ceil(fromMm / stepMm);
  const count = Math.max(0, Math.min(5000, Math.floor(toMm / stepMm) - first + 1));
  return Array.from({ length: count }, (_, index) => (first + index) * stepMm);
}
