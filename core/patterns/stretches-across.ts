import { at, type FlatPoint } from "../foundation/index.ts";

/** The stretches of the line u = const inside polygons (even-odd), from and to in v, ascending. */
export function stretchesAcross(
  polygons: readonly (readonly FlatPoint[])[],
  uMm: number,
): readonly (readonly [number, number])[] {
  const crossings = polygons
    .flatMap((polygon) =>
      polygon.flatMap((a, i) => {
        const b = at(polygon, (i + 1) % polygon.length);
        return a.u <= uMm === b.u <= uMm ? [] : [a.v + ((b.v - a.v) * (uMm - a.u)) / (b.u - a.u)];
      }),
    )
    .sort((a, b) => a - b);
  return Array.from({ length: Math.floor(crossings.length / 2) }, (_, i): readonly [number, number] => [
    at(crossings, 2 * i),
    at(crossings, 2 * i + 1),
  ]);
}
