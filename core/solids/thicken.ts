import { at, dotSpace, type FlatPoint, type SpacePoint } from "../foundation/index.ts";
import { type FacetMesh, outlineOf, typedMesh } from "./facets.ts";
import { meshRegion, nearest } from "./mesh-region.ts";
import type { RegionMesh, SheetLie, SolidBend, Triangle } from "./types.ts";

interface FlatMesh extends RegionMesh {
  readonly flats: readonly FlatPoint[];
}

/** What a sheet with its thickness is made of. */
export interface ThickMesh extends FacetMesh {
  readonly bend: SolidBend;
}

/**
 * The foam of a flat region in space: lower face, upper face and the walls between them. Vertex 2 i lies on the lower
 * face, 2 i + 1 over it on the upper.
 */
export function thicken(lie: SheetLie): ThickMesh {
  const region = meshRegion(lie.rims, lie.stationsMm);
  const flats = region.vertices.map(lie.flatAt);
  const mesh = readerUp(region, flats);
  const places = mesh.vertices.flatMap((vertex): readonly SpacePoint[] => [
    lie.spaceAt(vertex, vertex.offset, lie.lowerMm),
    lie.spaceAt(vertex, across(vertex.offset), lie.upperMm),
  ]);
  const rim = rimSides(mesh.triangles);
  const triangles = [
    ...mesh.triangles.flatMap(([a, b, c]): Triangle[] => [
      [2 * a, 2 * c, 2 * b],
      [2 * a + 1, 2 * b + 1, 2 * c + 1],
    ]),
    ...rim.flatMap(([a, b]): Triangle[] => [
      [2 * a, 2 * b, 2 * b + 1],
      [2 * a, 2 * b + 1, 2 * a + 1],
    ]),
  ];
  const outline = outlineOf(rim, (vertex) => at(flats, vertex));
  return {
    ...typedMesh(places, triangles, outline, rulingsOf(lie, mesh)),
    bend: bendOf(lie, { ...mesh, flats }, places),
  };
}

const across = ({ u, v }: FlatPoint): FlatPoint => ({ u: -u, v: -v });

/** The mesh with its triangles counter-clockwise for the reader of the flat, whichever way the chart runs. */
function readerUp(mesh: RegionMesh, flats: readonly FlatPoint[]): RegionMesh {
  let twice = 0;
  for (const triangle of mesh.triangles) {
    const [a, b, c] = triangle.map((vertex) => flats[vertex]);
    if (a && b && c) twice += (b.u - a.u) * (c.v - a.v) - (b.v - a.v) * (c.u - a.u);
  }
  if (twice >= 0) return mesh;
  return { ...mesh, triangles: mesh.triangles.map(([a, b, c]): Triangle => [a, c, b]) };
}

/** The sides that only one triangle has, in its direction. */
export function rimSides(triangles: readonly Triangle[]): readonly (readonly [number, number])[] {
  const sides = triangles.flatMap(([a, b, c]): (readonly [number, number])[] => [
    [a, b],
    [b, c],
    [c, a],
  ]);
  const known = new Set(sides.map(([a, b]) => `${a}/${b}`));
  return sides.filter(([a, b]) => !known.has(`${b}/${a}`));
}

/** The sides of triangles that lie on the rulings asked for, inside the region: each once, on both faces. */
function rulingsOf({ stationsMm }: SheetLie, mesh: RegionMesh): readonly (readonly [number, number])[] {
  const wanted = new Set(stationsMm.map((mm) => nearest(mesh.stationsMm, mm)));
  const sides = mesh.triangles.flatMap(([a, b, c]): (readonly [number, number])[] => [
    [a, b],
    [b, c],
    [c, a],
  ]);
  const known = new Set(sides.map(([a, b]) => `${a}/${b}`));
  return sides
    .filter(([a, b]) => {
      const station = at(mesh.stationOf, a);
      return a < b && station === mesh.stationOf[b] && wanted.has(station) && known.has(`${b}/${a}`);
    })
    .flatMap(([a, b]): (readonly [number, number])[] => [
      [2 * a, 2 * b],
      [2 * a + 1, 2 * b + 1],
    ]);
}

function bendOf(lie: SheetLie, mesh: FlatMesh, places: readonly SpacePoint[]): SolidBend {
  const frames = mesh.stationsMm.map(lie.frameAt);
  const flat: number[] = [];
  const bent: number[] = [];
  const stationOf: number[] = [];
  places.forEach((place, index) => {
    const vertex = index >> 1;
    const station = at(mesh.stationOf, vertex);
    const frame = at(frames, station);
    const spot = at(mesh.vertices, vertex);
    const isLower = index % 2 === 0;
    const laid = at(mesh.flats, vertex);
    const { u, v } = isLower ? spot.offset : across(spot.offset);
    const depthMm = (isLower ? lie.lowerMm : lie.upperMm) - lie.middleMm;
    const from = { x: place.x - frame.place.x, y: place.y - frame.place.y, z: place.z - frame.place.z };
    stationOf.push(station);
    flat.push(laid.u + u - frame.flat.u, laid.v + v - frame.flat.v, depthMm);
    bent.push(dotSpace(from, frame.alongU), dotSpace(from, frame.alongV), dotSpace(from, frame.normal));
  });
  return {
    stationOf: Uint16Array.from(stationOf),
    flat: Float32Array.from(flat),
    bent: Float32Array.from(bent),
    frames: Float32Array.from(
      frames.flatMap(({ alongU, alongV, normal }) =>
        [alongU, alongV, normal].flatMap(({ x, y, z }) => [x, y, z]),
      ),
    ),
    places: Float32Array.from(frames.flatMap(({ place: { x, y, z } }) => [x, y, z])),
    flatPlaces: Float32Array.from(frames.flatMap(({ flat: { u, v } }) => [u, v])),
    heldStation: middleStation(mesh),
  };
}

/** The station with as many vertices before it as after it. */
function middleStation({ stationOf, stationsMm }: RegionMesh): number {
  const [first, last] = [at(stationsMm, 0), at(stationsMm, -1)];
  const middle = (first + last) / 2;
  const used = [...new Set(stationOf)];
  return used.reduce((best, station) =>
    Math.abs(at(stationsMm, station) - middle) < Math.abs(at(stationsMm, best) - middle) ? station : best,
  );
}
