import { at, type FlatPoint, type SpacePoint } from "../foundation/index.ts";
import { bodyOfRib, type Jig, type Rib, type RibSet } from "../jig/index.ts";
import { type FacetMesh, outlineOf, typedMesh } from "./facets.ts";
import { meshRegion } from "./mesh-region.ts";
import { rimSides } from "./thicken.ts";
import type { Solid, Triangle } from "./types.ts";

/** Drawn apart, ribs and boards go so far away from the tray, mm. */
const RIBS_APART_MM = 260;
const BOARD_APART_MM = 420;

/**
 * Ribs and boards of the jig and its cradle as they stand in the car's frame, for looking: under the tray where it lies
 * upright on them, over it where it lies upside down. Bevelled tops are shown square.
 */
export const jigSolids = (jig: Jig): readonly Solid[] => [
  ...setSolids(jig, "jig"),
  ...(jig.cradle === undefined ? [] : setSolids(jig.cradle, "cradle")),
];

function setSolids({ ribs, baseboard }: RibSet, stand: "jig" | "cradle"): readonly Solid[] {
  const down = baseboard.attitude === "upright" ? -1 : 1;
  const zOf = (heightMm: number) => baseboard.levelZMm - down * heightMm;
  const solid = (id: string, name: string, mesh: FacetMesh, apartMm: number): Solid => ({
    id,
    partId: id,
    itemId: "",
    name,
    kind: "rib",
    stand,
    isImage: false,
    ...mesh,
    apart: { x: 0, y: 0, z: down * apartMm },
  });
  return [
    ...ribs.map((rib) => solid(rib.id, rib.name, ribMesh(rib, zOf), RIBS_APART_MM)),
    ...baseboard.sheets.map(({ id, corners: [a, b] }) => {
      const loop = [
        { u: a.x, v: a.y },
        { u: b.x, v: a.y },
        { u: b.x, v: b.y },
        { u: a.x, v: b.y },
      ];
      const mesh = slab([loop], ({ u, v }, side) => ({
        x: u,
        y: v,
        z: zOf(side === 0 ? 0 : -baseboard.thicknessMm),
      }));
      return solid(`${stand} ${id}`, `Baseboard of the ${stand}, sheet ${id}`, mesh, BOARD_APART_MM);
    }),
  ];
}

function ribMesh(rib: Rib, zOf: (heightMm: number) => number): FacetMesh {
  const body = bodyOfRib(rib);
  return slab([rib.outlineMm, ...rib.holesMm], ({ u, v }, side) => {
    const beside = at(body, side);
    return rib.runs === "across" ? { x: beside, y: u, z: zOf(v) } : { x: u, y: beside, z: zOf(v) };
  });
}

/** A flat thing with two faces: where each point of its loops lies on both. */
function slab(
  loops: readonly (readonly FlatPoint[])[],
  placeOf: (p: FlatPoint, side: 0 | 1) => SpacePoint,
): FacetMesh {
  const rims = loops.map((loop) => loop.map(({ u, v }) => ({ along: u, across: v, offset: { u: 0, v: 0 } })));
  const { vertices, triangles } = meshRegion(rims, []);
  const flats = vertices.map(({ along: u, across: v }) => ({ u, v }));
  const rim = rimSides(triangles);
  const places = flats.flatMap((p) => [placeOf(p, 0), placeOf(p, 1)]);
  const faces = [
    ...triangles.flatMap(([a, b, c]): Triangle[] => [
      [2 * a, 2 * c, 2 * b],
      [2 * a + 1, 2 * b + 1, 2 * c + 1],
    ]),
    ...rim.flatMap(([a, b]): Triangle[] => [
      [2 * a, 2 * b, 2 * b + 1],
      [2 * a, 2 * b + 1, 2 * a + 1],
    ]),
  ];
  const outward = sixfoldVolume(places, faces) < 0 ? faces.map(([a, b, c]): Triangle => [a, c, b]) : faces;
  return typedMesh(
    places,
    outward,
    outlineOf(rim, (vertex) => at(flats, vertex)),
  );
}

/** Positive where triangles run counter-clockwise seen from outside. */
const sixfoldVolume = (places: readonly SpacePoint[], triangles: readonly Triangle[]): number =>
  triangles.reduce((sum, [i, k, l]) => {
    const [a, b, c] = [at(places, i), at(places, k), at(places, l)];
    return (
      sum + a.x * (b.y * c.z - b.z * c.y) + a.y * (b.z * c.x - b.x * c.z) + a.z * (b.x * c.y - b.y * c.x)
    );
  }, 0);
