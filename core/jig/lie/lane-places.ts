import { at, distanceSpace, dotSpace, lengthSpace, type PlanPoint } from "../../foundation/index.ts";
import type { FoamSpot } from "./foam-stretches.ts";
import type { Lane, LanePlace } from "./types.ts";

/**
 * The places of a line over the foam with the length along it, and its turn summed up: by how the face's normal leans
 * over from place to place, so that a line which runs slantwise over a bend, or turns in plan, is told the foam's own
 * bend and no other. `isForced` says where the foam is bent against its will.
 */
export function placesOfLine(
  spots: readonly FoamSpot[],
  over: Lane["over"],
  isForced: (spot: PlanPoint) => boolean,
): readonly LanePlace[] {
  const places: LanePlace[] = [];
  let [alongMm, forcedMm, forcedSlope] = [0, 0, 0];
  for (const [i, spot] of spots.entries()) {
    const before = spots[i - 1];
    if (before) {
      const lengthMm = distanceSpace(before, spot);
      const turned = isForced(between(before, spot)) ? turnBetween(before, spot) : 0;
      alongMm += lengthMm;
      forcedMm += lengthMm * (forcedSlope + turned / 2);
      forcedSlope += turned;
    }
    const [placeMm, asideMm] = over === "across" ? [spot.x, spot.y] : [spot.y, spot.x];
    const { z: heightMm, normal } = spot;
    places.push({ placeMm, asideMm, alongMm, heightMm, forcedMm, forcedSlope, upShare: normal.z });
  }
  return places;
}

const between = (a: PlanPoint, b: PlanPoint): PlanPoint => ({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 });

/** How far the face turns up from one spot to the next, rad: its normal leans back against the way. */
function turnBetween(a: FoamSpot, b: FoamSpot): number {
  const way = { x: b.x - a.x, y: b.y - a.y, z: b.z - a.z };
  const lean = { x: b.normal.x - a.normal.x, y: b.normal.y - a.normal.y, z: b.normal.z - a.normal.z };
  return -dotSpace(lean, way) / lengthSpace(way);
}

/** The length along a lane at a place; beyond its ends it goes on straight. */
export function alongAt(places: readonly LanePlace[], placeMm: number): number {
  const i = stepAt(places, placeMm, (place) => place.placeMm);
  const [a, b] = [at(places, i), at(places, i + 1)];
  return a.alongMm + ((b.alongMm - a.alongMm) * (placeMm - a.placeMm)) / (b.placeMm - a.placeMm);
}

/** The plan point at a length along a lane, and how high the drawn face lies there. */
export function spotOnLane(
  { places, over }: Pick<Lane, "places" | "over">,
  alongMm: number,
): { readonly at: PlanPoint; readonly heightMm: number } {
  const i = stepAt(places, alongMm, (place) => place.alongMm);
  const [a, b] = [at(places, i), at(places, i + 1)];
  const share = (alongMm - a.alongMm) / (b.alongMm - a.alongMm);
  const placeMm = a.placeMm + share * (b.placeMm - a.placeMm);
  const asideMm = a.asideMm + share * (b.asideMm - a.asideMm);
  const heightMm = a.heightMm + share * (b.heightMm - a.heightMm);
  return { at: over === "across" ? { x: placeMm, y: asideMm } : { x: asideMm, y: placeMm }, heightMm };
}

/** A lane that ends at the trim lines. */
export function trimmedLane(lane: Lane): Lane {
  const { places, netMm } = lane;
  const [fromMm, toMm] = netMm;
  const endAt = (alongMm: number): LanePlace => {
    const i = stepAt(places, alongMm, (place) => place.alongMm);
    const [a, b] = [at(places, i), at(places, i + 1)];
    const share = (alongMm - a.alongMm) / (b.alongMm - a.alongMm);
    const mix = (of: keyof LanePlace) => a[of] + share * (b[of] - a[of]);
    return {
      placeMm: mix("placeMm"),
      asideMm: mix("asideMm"),
      alongMm,
      heightMm: mix("heightMm"),
      forcedMm: forcedAt(places, alongMm),
      forcedSlope: mix("forcedSlope"),
      upShare: mix("upShare"),
    };
  };
  const inside = places.filter(({ alongMm }) => alongMm > fromMm && alongMm < toMm);
  return { ...lane, places: [endAt(fromMm), ...inside, endAt(toMm)] };
}

/** Which ends of a lane run past the trim line. */
export const runsPast = ({ places, netMm }: Lane): readonly [boolean, boolean] => [
  netMm[0] > at(places, 0).alongMm + 1,
  netMm[1] < at(places, -1).alongMm - 1,
];

/** How far aside a lane runs at a place. */
export function asideAt(places: readonly LanePlace[], placeMm: number): number {
  const i = stepAt(places, placeMm, (place) => place.placeMm);
  const [a, b] = [at(places, i), at(places, i + 1)];
  return a.asideMm + ((b.asideMm - a.asideMm) * (placeMm - a.placeMm)) / (b.placeMm - a.placeMm);
}

/** What the foam must be bent away from flat at a length along a lane: cubic between its places, straight beyond. */
export function forcedAt(places: readonly LanePlace[], alongMm: number): number {
  const [first, last] = [at(places, 0), at(places, -1)];
  if (alongMm <= first.alongMm) return first.forcedMm + first.forcedSlope * (alongMm - first.alongMm);
  if (alongMm >= last.alongMm) return last.forcedMm + last.forcedSlope * (alongMm - last.alongMm);
  const i = stepAt(places, alongMm, ({ alongMm: mm }) => mm);
  const [a, b] = [at(places, i), at(places, i + 1)];
  const h = b.alongMm - a.alongMm;
  const t = (alongMm - a.alongMm) / h;
  const [r, s] = [1 - t, t];
  return (
    r * r * (1 + 2 * s) * a.forcedMm +
    s * s * (1 + 2 * r) * b.forcedMm +
    h * r * s * (r * a.forcedSlope - s * b.forcedSlope)
  );
}

/** The step that a value lies in; the first or last one beyond the ends. */
function stepAt(places: readonly LanePlace[], value: number, of: (place: LanePlace) => number): number {
  let [low, high] = [0, places.length - 1];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (of(at(places, middle)) <= value) low = middle;
    else high = middle;
  }
  return low;
}
