import { at, type SpacePoint } from "../foundation/index.ts";
import type { FoldedPlate } from "../plates/index.ts";
import { type FacetMesh, outlineOf, typedMesh } from "./facets.ts";
import { meshRegion } from "./mesh-region.ts";
import { rimSides } from "./thicken.ts";
import type { Triangle } from "./types.ts";

/** A folded plate of the right (or whole) hand: its base, its wings and their bends, each a closed body of metal. */
export function plateSolid(plate: FoldedPlate): FacetMesh {
  const bodies = [
    baseBody(plate),
    ...plate.wings.flatMap(({ airFace, upperFace, bend }) => [
      walled(airFace, upperFace),
      ...bend.slice(1).map((line, i) => {
        const before = at(bend, i);
        return walled(
          [before.air[0], before.air[1], line.air[1], line.air[0]],
          [before.upper[0], before.upper[1], line.upper[1], line.upper[0]],
          i === 0 ? "drawn" : "plain",
        );
      }),
    ]),
  ];
  const places: SpacePoint[] = [];
  const triangles: Triangle[] = [];
  const outline: (readonly [number, number])[] = [];
  for (const body of bodies) {
    const first = places.length;
    places.push(...body.places);
    for (const [a, b, c] of outsideOut(body)) triangles.push([a + first, b + first, c + first]);
    for (const [a, b] of body.outline) outline.push([a + first, b + first]);
  }
  return typedMesh(places, triangles, outline);
}

interface Body {
  readonly places: readonly SpacePoint[];
  readonly triangles: readonly Triangle[];
  readonly outline: readonly (readonly [number, number])[];
}

function baseBody({ base, zMm, thicknessMm }: FoldedPlate): Body {
  const rims = base.map((loop) => loop.map(({ x, y }) => ({ along: x, across: y, offset: { u: 0, v: 0 } })));
  const { vertices, triangles } = meshRegion(rims, []);
  const rim = rimSides(triangles);
  return {
    places: vertices.flatMap(({ along: x, across: y }) => [
      { x, y, z: zMm },
      { x, y, z: zMm + thicknessMm },
    ]),
    triangles: [
      ...triangles.flatMap(([a, b, c]): Triangle[] => [
        [2 * a, 2 * c, 2 * b],
        [2 * a + 1, 2 * b + 1, 2 * c + 1],
      ]),
      ...rim.flatMap(([a, b]): Triangle[] => [
        [2 * a, 2 * b, 2 * b + 1],
        [2 * a, 2 * b + 1, 2 * a + 1],
      ]),
    ],
    outline: outlineOf(rim, (vertex) => {
      const { along, across } = at(vertices, vertex);
      return { u: along, v: across };
    }),
  };
}

/** A body of four corners below and the four over them; a plain one shows only the ends of its first and last side. */
function walled(
  lower: readonly SpacePoint[],
  upper: readonly SpacePoint[],
  lines: "drawn" | "plain" = "drawn",
): Body {
  const places = [...lower, ...upper];
  const sides = [0, 1, 2, 3].map((a): readonly [number, number] => [a, (a + 1) % 4]);
  const along = lines === "drawn" ? [0, 1, 2, 3] : [1, 3];
  return {
    places,
    triangles: [
      [0, 2, 1],
      [0, 3, 2],
      [4, 5, 6],
      [4, 6, 7],
      ...sides.flatMap(([a, b]): Triangle[] => [
        [a, b, b + 4],
        [a, b + 4, a + 4],
      ]),
    ],
    outline: along.flatMap((index): (readonly [number, number])[] => {
      const [a, b] = at(sides, index);
      return [
        [a, b],
        [a + 4, b + 4],
      ];
    }),
  };
}

/** The triangles so that they run counter-clockwise seen from outside. */
function outsideOut({ places, triangles }: Body): readonly Triangle[] {
  const origin = at(places, 0);
  let six = 0;
  for (const triangle of triangles) {
    const [a, b, c] = triangle.map((index) => {
      const { x, y, z } = at(places, index);
      return { x: x - origin.x, y: y - origin.y, z: z - origin.z };
    });
    if (!a || !b || !c) continue;
    six += a.x * (b.y * c.z - b.z * c.y) + a.y * (b.z * c.x - b.x * c.z) + a.z * (b.x * c.y - b.y * c.x);
  }
  return six >= 0 ? triangles : triangles.map(([a, b, c]): Triangle => [a, c, b]);
}
