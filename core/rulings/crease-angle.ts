import type { RulingEnds } from "./ruling-cost.ts";
import type { FanApex } from "./types.ts";

/** One side of a ruling: its ends with the tangents of that side, and what the sheet does there. */
export interface RulingSide {
  readonly ends: RulingEnds;
  readonly fan: FanApex;
}

/**
 * The fold along a ruling, rad: the angle between the planes before and after it, at the end where it is larger. In a fan
 * the plane of the swept tangent holds at both ends; where a tangent runs along the ruling the other end's plane holds.
 */
export function creaseAngle(before: RulingSide, after: RulingSide): number {
  return foldOf(planesOf(before.ends), planesOf(after.ends), before.fan, after.fan);
}

/** Planes of a ruling's two tangents: their normals, six numbers; nothing where a tangent runs along the ruling. */
export type RulingPlanes = Float64Array;

/** The fold between two sides whose planes are known. */
export function foldOf(before: RulingPlanes, after: RulingPlanes, came: FanApex, goes: FanApex): number {
  const [a, b] = [placeOf(before, came, FIRST), placeOf(before, came, SECOND)];
  const [c, d] = [placeOf(after, goes, FIRST), placeOf(after, goes, SECOND)];
  if (a < 0 || c < 0) return 0;
  const atFirst = angleBetween(before, a, after, c);
  return a === b && c === d ? atFirst : Math.max(atFirst, angleBetween(before, b, after, d));
}

const FIRST = 0;
const SECOND = 3;

export function planesOf(ends: RulingEnds, out: RulingPlanes = new Float64Array(6)): RulingPlanes {
  const { first, firstOffset: i, second, secondOffset: j } = ends;
  const x = n(second, j) - n(first, i);
  const y = n(second, j + 1) - n(first, i + 1);
  const z = n(second, j + 2) - n(first, i + 2);
  writeNormal(first, i + 3, x, y, z, out, FIRST);
  writeNormal(second, j + 3, x, y, z, out, SECOND);
  return out;
}

function writeNormal(
  list: Float64Array,
  offset: number,
  x: number,
  y: number,
  z: number,
  out: RulingPlanes,
  place: number,
): void {
  const a = n(list, offset);
  const b = n(list, offset + 1);
  const c = n(list, offset + 2);
  const nx = b * z - c * y;
  const ny = c * x - a * z;
  const nz = a * y - b * x;
  const isPlane = nx * nx + ny * ny + nz * nz > 1e-14 * (x * x + y * y + z * z);
  out[place] = isPlane ? nx : 0;
  out[place + 1] = isPlane ? ny : 0;
  out[place + 2] = isPlane ? nz : 0;
}

/** Where the plane stands that holds at one end; −1 where there is none. */
function placeOf(planes: RulingPlanes, fan: FanApex, end: number): number {
  const own = fan === "first" ? SECOND : fan === "second" ? FIRST : end;
  if (isPlane(planes, own)) return own;
  const other = own === FIRST ? SECOND : FIRST;
  return isPlane(planes, other) ? other : -1;
}

const isPlane = (planes: RulingPlanes, o: number): boolean =>
  n(planes, o) !== 0 || n(planes, o + 1) !== 0 || n(planes, o + 2) !== 0;

function angleBetween(a: RulingPlanes, i: number, b: RulingPlanes, j: number): number {
  const [ax, ay, az] = [n(a, i), n(a, i + 1), n(a, i + 2)];
  const [bx, by, bz] = [n(b, j), n(b, j + 1), n(b, j + 2)];
  const cx = ay * bz - az * by;
  const cy = az * bx - ax * bz;
  const cz = ax * by - ay * bx;
  return Math.atan2(Math.sqrt(cx * cx + cy * cy + cz * cz), ax * bx + ay * by + az * bz);
}

const n = (list: Float64Array, index: number): number => list[index] ?? 0;
