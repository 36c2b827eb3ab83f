import { at, type FlatPoint, type SpacePoint } from "../foundation/index.ts";

/** Something that weighs, and where. */
export interface Weighing {
  readonly massKg: number;
  readonly centre: SpacePoint;
}

/** What several things weigh together and where; at the origin where they weigh nothing. A hole may weigh less than nothing. */
export function centreOf(things: readonly Weighing[]): Weighing {
  const massKg = things.reduce((sum, one) => sum + one.massKg, 0);
  const mean = (of: (point: SpacePoint) => number) =>
    massKg === 0 ? 0 : things.reduce((sum, one) => sum + one.massKg * of(one.centre), 0) / massKg;
  return { massKg, centre: { x: mean(({ x }) => x), y: mean(({ y }) => y), z: mean(({ z }) => z) } };
}

/** A flat outline is cut into so many slices at least; more where it has corners. */
const SLICES = 240;
/** Corners nearer along u than this share a slice, mm. */
const SAME_MM = 1e-6;
/** An edge that runs so nearly across the slices has one of them begin on it, mm. */
const ACROSS_MM = 1e-3;

/**
 * The area within flat loops (even-odd) and its centre once it is bent: slices along u, each by two Gauss points, placed by
 * `toSpace`. Exact for polygons that stay flat.
 */
export function centreOfLoops(
  loops: readonly (readonly FlatPoint[])[],
  toSpace: (flat: FlatPoint) => SpacePoint,
): { readonly areaMm2: number; readonly centre: SpacePoint } {
  const edges = loops.flatMap((loop) => loop.map((to, i) => ({ from: at(loop, i - 1), to })));
  const us = loops.flatMap((loop) => loop.map(({ u }) => u));
  if (us.length === 0) return { areaMm2: 0, centre: { x: 0, y: 0, z: 0 } };
  const [least, most] = [us.reduce((a, b) => Math.min(a, b)), us.reduce((a, b) => Math.max(a, b))];
  const across = edges.filter(({ from, to }) => Math.abs(to.u - from.u) < ACROSS_MM).map(({ to }) => to.u);
  const even = Array.from({ length: SLICES + 1 }, (_, i) => least + ((most - least) * i) / SLICES);
  const corners = us.length <= SLICES ? us : across;
  const stops = [...even, ...corners]
    .sort((a, b) => a - b)
    .filter((u, i, all) => i === 0 || u - at(all, i - 1) > SAME_MM);
  let [areaMm2, x, y, z] = [0, 0, 0, 0];
  for (let i = 0; i + 1 < stops.length; i++) {
    const [from, to] = [at(stops, i), at(stops, i + 1)];
    for (const share of GAUSS) {
      const u = from + (to - from) * share;
      const crossings = edges
        .filter((edge) => edge.from.u > u !== edge.to.u > u)
        .map(
          (edge) => edge.from.v + ((u - edge.from.u) * (edge.to.v - edge.from.v)) / (edge.to.u - edge.from.u),
        )
        .sort((a, b) => a - b);
      for (let k = 0; k + 1 < crossings.length; k += 2) {
        const [low, high] = [at(crossings, k), at(crossings, k + 1)];
        const own = ((to - from) / 2) * (high - low);
        const middle = toSpace({ u, v: (low + high) / 2 });
        areaMm2 += own;
        x += own * middle.x;
        y += own * middle.y;
        z += own * middle.z;
      }
    }
  }
  const share = areaMm2 > 0 ? 1 / areaMm2 : 0;
  return { areaMm2, centre: { x: x * share, y: y * share, z: z * share } };
}

/** Places of the two-point Gauss rule in a slice. */
const GAUSS = [0.5 - 0.5 / Math.sqrt(3), 0.5 + 0.5 / Math.sqrt(3)] as const;
