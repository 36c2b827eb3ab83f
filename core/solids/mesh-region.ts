import { at } from "../foundation/index.ts";
import type { RegionMesh, Rim, RimPoint, Triangle } from "./types.ts";

/** Places along nearer than this are one station, mm. */
const SAME_STATION_MM = 0.02;

/**
 * The inside of closed rims (even-odd, so concave outlines, holes and islands are ordinary) as triangles: the region
 * is cut at every corner of a rim and at the stations asked for; between two of these it consists of trapezoids.
 */
export function meshRegion(rims: readonly Rim[], wantedMm: readonly number[]): RegionMesh {
  const stationsMm = stationsOf(rims, wantedMm);
  const net = newNet(stationsMm);
  const sides = rims.flatMap((rim) => sidesOf(rim, net));
  const columns = columnsOf(net);
  const triangles: Triangle[] = [];
  for (let station = 0; station + 1 < stationsMm.length; station++) {
    const active = sides
      .filter(({ from, to }) => from <= station && to > station)
      .map((side) => ({ left: vertexOn(side, station), right: vertexOn(side, station + 1) }))
      .sort((a, b) => middleOf(net, a) - middleOf(net, b));
    for (let k = 0; k + 1 < active.length; k += 2) {
      const [low, high] = [at(active, k), at(active, k + 1)];
      const left = chain(net, at(columns, station), low.left, high.left);
      const right = chain(net, at(columns, station + 1), low.right, high.right);
      triangles.push(...ladder(left, right));
    }
  }
  return { stationsMm, vertices: net.vertices, stationOf: net.stationOf, triangles };
}

interface Net {
  readonly stationsMm: readonly number[];
  readonly vertices: RimPoint[];
  readonly stationOf: number[];
}

const newNet = (stationsMm: readonly number[]): Net => ({ stationsMm, vertices: [], stationOf: [] });

/** A side of a rim that goes from one station to a later one, with its vertex on each. */
interface Side {
  readonly from: number;
  readonly to: number;
  readonly vertices: readonly number[];
}

const vertexOn = ({ from, vertices }: Side, station: number): number => at(vertices, station - from);

/** Corners first, so that the rims keep their shape; stations asked for where no corner is near. */
function stationsOf(rims: readonly Rim[], wantedMm: readonly number[]): readonly number[] {
  const corners = merged(rims.flatMap((rim) => rim.map(({ along }) => along)));
  const [first, last] = [at(corners, 0), at(corners, -1)];
  const inside = wantedMm.filter((mm) => mm > first && mm < last);
  const free = inside.filter((mm) => Math.abs(at(corners, nearest(corners, mm)) - mm) > SAME_STATION_MM);
  return merged([...corners, ...free]);
}

function merged(values: readonly number[]): readonly number[] {
  const kept: number[] = [];
  for (const value of [...values].sort((a, b) => a - b)) {
    if (kept.length === 0 || value - at(kept, -1) > SAME_STATION_MM) kept.push(value);
  }
  return kept;
}

/** The index of the value nearest to one, in ascending values. */
export function nearest(values: readonly number[], value: number): number {
  let [low, high] = [0, values.length - 1];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (at(values, middle) <= value) low = middle;
    else high = middle;
  }
  return value - at(values, low) < at(values, high) - value ? low : high;
}

function sidesOf(rim: Rim, net: Net): readonly Side[] {
  const corners = rim.map((point) => {
    const station = nearest(net.stationsMm, point.along);
    return { station, vertex: addVertex(net, station, point) };
  });
  return rim.flatMap((_, i): readonly Side[] => {
    const [a, b] = [at(corners, i), at(corners, (i + 1) % rim.length)];
    if (a.station === b.station) return [];
    const [low, high] = a.station < b.station ? [a, b] : [b, a];
    const between: number[] = [];
    const [p, q] = [at(net.vertices, low.vertex), at(net.vertices, high.vertex)];
    for (let station = low.station + 1; station < high.station; station++) {
      const share = (at(net.stationsMm, station) - p.along) / (q.along - p.along);
      between.push(addVertex(net, station, mixRim(p, q, share)));
    }
    return [{ from: low.station, to: high.station, vertices: [low.vertex, ...between, high.vertex] }];
  });
}

function addVertex(net: Net, station: number, point: RimPoint): number {
  net.stationOf.push(station);
  return net.vertices.push({ ...point, along: at(net.stationsMm, station) }) - 1;
}

const mixRim = (p: RimPoint, q: RimPoint, share: number): RimPoint => ({
  along: p.along + (q.along - p.along) * share,
  across: p.across + (q.across - p.across) * share,
  offset: {
    u: p.offset.u + (q.offset.u - p.offset.u) * share,
    v: p.offset.v + (q.offset.v - p.offset.v) * share,
  },
});

/** The vertices of every station, from low to high. */
function columnsOf({ stationsMm, vertices, stationOf }: Net): readonly (readonly number[])[] {
  const columns: number[][] = stationsMm.map(() => []);
  stationOf.forEach((station, vertex) => {
    columns[station]?.push(vertex);
  });
  const across = (vertex: number): number => at(vertices, vertex).across;
  return columns.map((column) => column.sort((a, b) => across(a) - across(b)));
}

const middleOf = ({ vertices }: Net, { left, right }: { readonly left: number; readonly right: number }) =>
  at(vertices, left).across + at(vertices, right).across;

/** One upright side of a trapezoid: its two corners and whatever vertices lie between them. */
function chain(net: Net, column: readonly number[], low: number, high: number): readonly number[] {
  if (low === high) return [low];
  const across = (vertex: number): number => at(net.vertices, vertex).across;
  const [from, to] = [across(low), across(high)];
  const between = column.filter((vertex) => across(vertex) > from && across(vertex) < to);
  return [low, ...between, high];
}

/** Triangles between two chains that both run upward, the left one first. */
function ladder(left: readonly number[], right: readonly number[]): readonly Triangle[] {
  const triangles: Triangle[] = [];
  let [i, k] = [0, 0];
  while (i + 1 < left.length || k + 1 < right.length) {
    const isRight = k + 1 < right.length && (i + 1 >= left.length || k * left.length <= i * right.length);
    const [a, b] = [at(left, i), at(right, k)];
    if (isRight) k += 1;
    else i += 1;
    triangles.push(isRight ? [a, b, at(right, k)] : [a, b, at(left, i)]);
  }
  return triangles;
}
