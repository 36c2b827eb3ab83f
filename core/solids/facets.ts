import { at, type FlatPoint, type SpacePoint } from "../foundation/index.ts";
import type { Solid, Triangle } from "./types.ts";

/** A closed surface of triangles and the edges to be drawn on it. */
export type FacetMesh = Pick<Solid, "positions" | "triangles" | "outline" | "rulings" | "middle">;

/** Lists of points, triangles and lines as typed arrays. */
export function typedMesh(
  places: readonly SpacePoint[],
  triangles: readonly Triangle[],
  outline: readonly (readonly [number, number])[],
  rulings: readonly (readonly [number, number])[] = [],
): FacetMesh {
  const middleOf = (values: readonly number[]): number => {
    let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
    for (const value of values) [least, most] = [Math.min(least, value), Math.max(most, value)];
    return (least + most) / 2;
  };
  return {
    positions: Float32Array.from(places.flatMap(({ x, y, z }) => [x, y, z])),
    triangles: Uint32Array.from(triangles.flat()),
    outline: Uint32Array.from(outline.flat()),
    rulings: Uint32Array.from(rulings.flat()),
    middle: {
      x: middleOf(places.map(({ x }) => x)),
      y: middleOf(places.map(({ y }) => y)),
      z: middleOf(places.map(({ z }) => z)),
    },
  };
}

/** An outline that turns by more than this between two of its sides has an edge from face to face. */
const SHARP_RAD = 0.4;

/** The rim of both faces and, at its sharp corners, the lines between them; vertices as `thicken` numbers them. */
export function outlineOf(
  rim: readonly (readonly [number, number])[],
  flatAt: (vertex: number) => FlatPoint,
): readonly (readonly [number, number])[] {
  const before = new Map(rim.map(([a, b]) => [b, a]));
  const sharp = rim.filter(([a, b]) => {
    const from = before.get(a);
    return from === undefined || turnRad([from, a, b].map(flatAt)) > SHARP_RAD;
  });
  return [
    ...rim.flatMap(([a, b]): (readonly [number, number])[] => [
      [2 * a, 2 * b],
      [2 * a + 1, 2 * b + 1],
    ]),
    ...sharp.map(([a]): readonly [number, number] => [2 * a, 2 * a + 1]),
  ];
}

function turnRad(points: readonly FlatPoint[]): number {
  const [a, b, c] = [at(points, 0), at(points, 1), at(points, 2)];
  const [du, dv, eu, ev] = [b.u - a.u, b.v - a.v, c.u - b.u, c.v - b.v];
  return Math.abs(Math.atan2(du * ev - dv * eu, du * eu + dv * ev));
}
