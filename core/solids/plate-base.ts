import { at } from "../foundation/index.ts";
import type { FoldedPlate } from "../plates/index.ts";
import { type FacetMesh, outlineOf, typedMesh } from "./facets.ts";
import { meshRegion } from "./mesh-region.ts";
import { rimSides } from "./thicken.ts";
import type { Triangle } from "./types.ts";

/** The base of a folded plate of the right (or whole) hand, between its bends. */
export function plateBase({ base, zMm, thicknessMm }: FoldedPlate): FacetMesh {
  const rims = base.map((loop) => loop.map(({ x, y }) => ({ along: x, across: y, offset: { u: 0, v: 0 } })));
  const { vertices, triangles } = meshRegion(rims, []);
  const rim = rimSides(triangles);
  return typedMesh(
    vertices.flatMap(({ along: x, across: y }) => [
      { x, y, z: zMm },
      { x, y, z: zMm + thicknessMm },
    ]),
    [
      ...triangles.flatMap(([a, b, c]): Triangle[] => [
        [2 * a, 2 * c, 2 * b],
        [2 * a + 1, 2 * b + 1, 2 * c + 1],
      ]),
      ...rim.flatMap(([a, b]): Triangle[] => [
        [2 * a, 2 * b, 2 * b + 1],
        [2 * a, 2 * b + 1, 2 * a + 1],
      ]),
    ],
    outlineOf(rim, (vertex) => {
      const { along, across } = at(vertices, vertex);
      return { u: along, v: across };
    }),
  );
}
