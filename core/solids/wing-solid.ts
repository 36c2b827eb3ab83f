import { addSpace, at, crossSpace, dotSpace, lengthSpace, type SpacePoint } from "../foundation/index.ts";
import type { BendFigures, FoldedWing } from "../plates/index.ts";
import { type FacetMesh, typedMesh } from "./facets.ts";
import type { SolidBend, StationFrame, Triangle } from "./types.ts";

/** Two ends of a line across a wing on the air face, and the two over them, and how far it lies from the base in the flat. */
interface Cross {
  readonly air: readonly [SpacePoint, SpacePoint];
  readonly upper: readonly [SpacePoint, SpacePoint];
  readonly alongMm: number;
}

/** A wing with its bend as a closed body, from the tangent where the bend begins in the base to its free edge. */
export function wingSolid(wing: FoldedWing, figures: BendFigures): FacetMesh & { readonly bend: SolidBend } {
  const crosses = crossesOf(wing, figures);
  const frames = crosses.map((_, i) => frameAt(crosses, figures, i));
  const places = crosses.flatMap(({ air, upper }) => [air[0], air[1], upper[0], upper[1]]);
  const last = crosses.length - 1;
  const first = at(crosses, 0);
  // Seen from under the air face the way along the edge and then outward runs clockwise, or it does not.
  const isMirrored = dotSpace(crossSpace(span(first.air), outwardAt(crosses, 0)), thickness(first)) > 0;
  const triangles = [
    ...crosses.slice(1).flatMap((_, i) => bandBetween(4 * i, 4 * i + 4)),
    ...quad(0, 2, 3, 1),
    ...quad(4 * last, 4 * last + 1, 4 * last + 3, 4 * last + 2),
  ].map(([a, b, c]): Triangle => (isMirrored ? [a, c, b] : [a, b, c]));
  return {
    ...typedMesh(places, triangles, outlineOf(last)),
    bend: bendOf(crosses, frames, places, neutralMm(figures)),
  };
}

function crossesOf({ bend, airFace, upperFace }: FoldedWing, figures: BendFigures): readonly Cross[] {
  const steps = bend.length - 1;
  return [
    ...bend.map(({ air, upper }, i) => ({ air, upper, alongMm: (figures.allowanceMm * i) / steps })),
    {
      air: [at(airFace, 3), at(airFace, 2)],
      upper: [at(upperFace, 3), at(upperFace, 2)],
      alongMm: figures.allowanceMm + figures.flangeMm,
    },
  ];
}

/** How far the neutral fibre lies over the air face: K is measured from the inside of the bend. */
const neutralMm = ({ direction, kFactor, thicknessMm }: BendFigures): number =>
  thicknessMm * (direction === "up" ? 1 - kFactor : kFactor);

const minus = (a: SpacePoint, b: SpacePoint): SpacePoint => addSpace(a, b, -1);
const unit = (a: SpacePoint): SpacePoint => addSpace({ x: 0, y: 0, z: 0 }, a, 1 / (lengthSpace(a) || 1));
const span = ([a, b]: readonly [SpacePoint, SpacePoint]): SpacePoint => minus(b, a);
const thickness = ({ air, upper }: Cross): SpacePoint => minus(upper[0], air[0]);

/** From one line across to the next, or before the last from the one before. */
function outwardAt(crosses: readonly Cross[], index: number): SpacePoint {
  const from = Math.min(index, crosses.length - 2);
  return minus(at(crosses, from + 1).air[0], at(crosses, from).air[0]);
}

/** u runs outward square to the edge, v along it, either way round, so that both and the normal are right-handed. */
function frameAt(crosses: readonly Cross[], figures: BendFigures, index: number): StationFrame {
  const cross = at(crosses, index);
  const normal = unit(thickness(cross));
  const along = unit(span(at(crosses, 0).air));
  const side = unit(crossSpace(along, normal));
  const sign = dotSpace(side, outwardAt(crosses, index)) >= 0 ? 1 : -1;
  const middle = addSpace(cross.air[0], span(cross.air), 0.5);
  return {
    place: addSpace(middle, normal, neutralMm(figures)),
    flat: { u: cross.alongMm, v: 0 },
    alongU: addSpace({ x: 0, y: 0, z: 0 }, side, sign),
    alongV: addSpace({ x: 0, y: 0, z: 0 }, along, sign),
    normal,
  };
}

/** The four sides between two lines across; corners of each: air face, then upper face. */
const bandBetween = (a: number, b: number): readonly Triangle[] => [
  ...quad(a, a + 1, b + 1, b),
  ...quad(a + 2, b + 2, b + 3, a + 3),
  ...quad(a, b, b + 2, a + 2),
  ...quad(a + 1, a + 3, b + 3, b + 1),
];

const quad = (a: number, b: number, c: number, d: number): readonly Triangle[] => [
  [a, b, c],
  [a, c, d],
];

/** Along both ends, across the free edge and where the bend begins and ends. */
const outlineOf = (last: number): readonly (readonly [number, number])[] => [
  ...Array.from({ length: last }, (_, i) =>
    [0, 1, 2, 3].map((k) => [4 * i + k, 4 * i + 4 + k] as const),
  ).flat(),
  ...[0, last - 1, last].flatMap((i) => [[4 * i, 4 * i + 1] as const, [4 * i + 2, 4 * i + 3] as const]),
  [4 * last, 4 * last + 2],
  [4 * last + 1, 4 * last + 3],
];

function bendOf(
  crosses: readonly Cross[],
  frames: readonly StationFrame[],
  places: readonly SpacePoint[],
  neutral: number,
): SolidBend {
  const flat: number[] = [];
  const bent: number[] = [];
  places.forEach((place, vertex) => {
    const frame = at(frames, vertex >> 2);
    const from = minus(place, frame.place);
    const v = dotSpace(from, frame.alongV);
    const overAirMm = vertex % 4 < 2 ? 0 : lengthSpace(thickness(at(crosses, vertex >> 2)));
    flat.push(0, v, overAirMm - neutral);
    bent.push(dotSpace(from, frame.alongU), v, dotSpace(from, frame.normal));
  });
  const spots = (list: readonly SpacePoint[]) => Float32Array.from(list.flatMap(({ x, y, z }) => [x, y, z]));
  return {
    stationOf: Uint16Array.from(places, (_, vertex) => vertex >> 2),
    flat: Float32Array.from(flat),
    bent: Float32Array.from(bent),
    frames: spots(frames.flatMap(({ alongU, alongV, normal }) => [alongU, alongV, normal])),
    places: spots(frames.map(({ place }) => place)),
    flatPlaces: Float32Array.from(frames.flatMap(({ flat: { u, v } }) => [u, v])),
    heldStation: 0,
  };
}
