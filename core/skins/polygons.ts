import {
  areaPathsD,
  differenceD,
  EndType,
  FillRule,
  inflatePathsD,
  intersectD,
  JoinType,
  ramerDouglasPeuckerPathsD,
  unionD,
} from "clipper2-ts";
import { isInside } from "../cutting/index.ts";
import { at, distanceFlat, type FlatPoint } from "../foundation/index.ts";
import { moveInward } from "../patterns/index.ts";

/** A flat area: outlines counter-clockwise, holes clockwise. */
export type Area = readonly (readonly FlatPoint[])[];

/** Decimals of a mm that areas are reckoned with (clipper2-ts): cloth is cut to a millimetre. */
const DECIMALS = 4;
/** A corner is carried out no farther than so many widths. */
const MITRE_LIMIT = 3;
/** Less is dust between two lines that were meant to be one, mm². */
const DUST_MM2 = 1;

const pathsOf = (area: Area) => area.map((loop) => loop.map(({ u, v }) => ({ x: u, y: v })));
const areaFrom = (paths: readonly { readonly x: number; readonly y: number }[][]): Area =>
  paths.map((path) => path.map(({ x, y }) => ({ u: x, v: y })));

export const unite = (...areas: readonly Area[]): Area =>
  areaFrom(unionD(pathsOf(areas.flat()), [], FillRule.NonZero, DECIMALS));

export const subtract = (from: Area, what: Area): Area =>
  what.length === 0 ? from : areaFrom(differenceD(pathsOf(from), pathsOf(what), FillRule.NonZero, DECIMALS));

export const overlapOf = (one: Area, other: Area): Area =>
  areaFrom(intersectD(pathsOf(one), pathsOf(other), FillRule.NonZero, DECIMALS));

export const areaMm2 = (area: Area): number => areaPathsD(pathsOf(area));

/** The length of all its borders, mm. */
export const borderMm = (area: Area): number =>
  area.reduce(
    (sum, loop) => sum + loop.reduce((length, point, i) => length + distanceFlat(point, at(loop, i - 1)), 0),
    0,
  );

/** The length of a line, mm. */
export const lengthMm = (line: readonly FlatPoint[]): number =>
  line.slice(1).reduce((sum, point, i) => sum + distanceFlat(point, at(line, i)), 0);

/** The area with every loop thinned to what deviates no more than this, mm. */
export const thinned = (area: Area, byMm: number): Area =>
  areaFrom(ramerDouglasPeuckerPathsD(pathsOf(area), byMm));

/** A line thinned to what deviates no more than this, but with a point at least so often, mm. */
export function evenLine(line: readonly FlatPoint[], byMm: number, stepMm: number): readonly FlatPoint[] {
  const kept = thinned([line], byMm)[0] ?? line;
  return kept.flatMap((point, i) => {
    const next = kept[i + 1];
    if (!next) return [point];
    const count = Math.ceil(Math.hypot(next.u - point.u, next.v - point.v) / stepMm);
    return Array.from({ length: Math.max(1, count) }, (_, k) => ({
      u: point.u + ((next.u - point.u) * k) / count,
      v: point.v + ((next.v - point.v) * k) / count,
    }));
  });
}

/** The area grown by a distance, mm; shrunk where it is negative. */
export const grown = (area: Area, byMm: number): Area =>
  areaFrom(inflatePathsD(pathsOf(area), byMm, JoinType.Miter, EndType.Polygon, MITRE_LIMIT, DECIMALS));

/** What lies within a distance of a line on both sides, ending square with it, mm. */
export function bandAlong(line: readonly FlatPoint[], halfWidthMm: number): Area {
  if (halfWidthMm <= 0 || line.length < 2) return [];
  const path = line.map(({ u, v }) => ({ x: u, y: v }));
  return areaFrom(inflatePathsD([path], halfWidthMm, JoinType.Miter, EndType.Butt, MITRE_LIMIT, DECIMALS));
}

/** What lies within a distance of a line on one side of it: left of its course, or right where the distance is negative. */
export function bandBeside(line: readonly FlatPoint[], widthMm: number): Area {
  if (widthMm === 0 || line.length < 2) return [];
  const moved = moveInward(
    line,
    line.map(() => widthMm),
  );
  return unite([[...line, ...moved.toReversed()]]);
}

/** Its connected pieces, each with its holes; dust is left out. */
export function islandsOf(area: Area): readonly Area[] {
  const outlines = area.filter((loop) => areaMm2([loop]) > DUST_MM2);
  const holes = area.filter((loop) => areaMm2([loop]) < -DUST_MM2);
  return outlines.map((outline) => [
    outline,
    ...holes.filter((hole) => {
      const around = outlines.filter((one) => isInside(at(hole, 0), one));
      return around.toSorted((a, b) => areaMm2([a]) - areaMm2([b]))[0] === outline;
    }),
  ]);
}

/** Whether a place lies in an area. */
export const isWithin = (area: Area, place: FlatPoint): boolean =>
  area.reduce((count, loop) => count + (isInside(place, loop) ? 1 : 0), 0) % 2 === 1;

/** The least and the most that its corners reach in a direction, mm. */
export function reachAlong(area: Area, angleRad: number): readonly [number, number] {
  const [cos, sin] = [Math.cos(angleRad), Math.sin(angleRad)];
  let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const loop of area)
    for (const { u, v } of loop) {
      const along = u * cos + v * sin;
      least = Math.min(least, along);
      most = Math.max(most, along);
    }
  return [least, most];
}

/** Farther than any sheet reaches, mm. */
const FAR_MM = 20_000;

/** Everything whose place in a direction lies between two values. */
export function stripeAlong(angleRad: number, fromMm: number, toMm: number): Area {
  const [from, to] = [Math.max(-FAR_MM, fromMm), Math.min(FAR_MM, toMm)];
  if (!(to > from)) return [];
  const [cos, sin] = [Math.cos(angleRad), Math.sin(angleRad)];
  const corner = (a: number, b: number): FlatPoint => ({ u: a * cos - b * sin, v: a * sin + b * cos });
  return [[corner(from, -FAR_MM), corner(to, -FAR_MM), corner(to, FAR_MM), corner(from, FAR_MM)]];
}
