import type { Solid } from "../../../core/solids/index.ts";

type Spot = readonly [number, number, number];

/** Vertex of a solid, from these places or its own. */
const spotsOf = (solid: Solid, positions: Float32Array): readonly Spot[] =>
  Array.from(
    { length: positions.length / 3 },
    (_, i): Spot => [
      positions[3 * i] ?? Number.NaN,
      positions[3 * i + 1] ?? Number.NaN,
      positions[3 * i + 2] ?? Number.NaN,
    ],
  ).slice(0, solid.positions.length / 3);

export const trianglesOf = (solid: Solid): readonly Spot[] =>
  Array.from(
    { length: solid.triangles.length / 3 },
    (_, i): Spot => [
      solid.triangles[3 * i] ?? -1,
      solid.triangles[3 * i + 1] ?? -1,
      solid.triangles[3 * i + 2] ?? -1,
    ],
  );

/** How often each side of a triangle is used in its direction without the same side the other way. */
export function openSides(solid: Solid): number {
  const counts = new Map<string, number>();
  for (const [a, b, c] of trianglesOf(solid)) {
    for (const [p, q] of [
      [a, b],
      [b, c],
      [c, a],
    ] as const) {
      const [key, step] = p < q ? [`${p}/${q}`, 1] : [`${q}/${p}`, -1];
      counts.set(key, (counts.get(key) ?? 0) + step);
    }
  }
  return [...counts.values()].filter((count) => count !== 0).length;
}

const minus = (a: Spot, b: Spot): Spot => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const cross = (a: Spot, b: Spot): Spot => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const dot = (a: Spot, b: Spot): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const size = (a: Spot): number => Math.hypot(...a);

/** Volume inside, by the divergence theorem about the first vertex; positive when triangles face outward. */
export function volumeMm3(solid: Solid, positions: Float32Array = solid.positions): number {
  const spots = spotsOf(solid, positions);
  const [origin] = spots;
  if (!origin) return Number.NaN;
  const corner = (index: number): Spot => minus(spots[index] ?? origin, origin);
  return trianglesOf(solid).reduce(
    (sum, [a, b, c]) => sum + dot(corner(a), cross(corner(b), corner(c))) / 6,
    0,
  );
}

/** Area of the surface half-way between both faces: of the upper face's triangles, each corner moved half-way down. */
export function middleAreaMm2(solid: Solid, positions: Float32Array = solid.positions): number {
  const spots = spotsOf(solid, positions);
  const middle = (index: number): Spot => {
    const [p, q] = [spots[index], spots[index - 1]];
    return p && q ? [(p[0] + q[0]) / 2, (p[1] + q[1]) / 2, (p[2] + q[2]) / 2] : [Number.NaN, 0, 0];
  };
  return trianglesOf(solid)
    .filter((triangle) => triangle.every((index) => index % 2 === 1))
    .reduce((sum, [a, b, c]) => {
      const origin = middle(a);
      return sum + size(cross(minus(middle(b), origin), minus(middle(c), origin))) / 2;
    }, 0);
}

/** Lengths of the lines of a solid's outline. */
export function outlineLengthsMm(solid: Solid, positions: Float32Array): readonly number[] {
  const spots = spotsOf(solid, positions);
  return Array.from({ length: solid.outline.length / 2 }, (_, i) => {
    const [a, b] = [spots[solid.outline[2 * i] ?? -1], spots[solid.outline[2 * i + 1] ?? -1]];
    return a && b ? size(minus(a, b)) : Number.NaN;
  });
}
