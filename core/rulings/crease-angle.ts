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
  const [firstBefore, secondBefore] = planes(before);
  const [firstAfter, secondAfter] = planes(after);
  if (firstBefore === undefined || firstAfter === undefined) return 0;
  if (secondBefore === undefined || secondAfter === undefined) return 0;
  return Math.max(angle(firstBefore, firstAfter), angle(secondBefore, secondAfter));
}

type Vec3 = readonly [number, number, number];

function planes({ ends, fan }: RulingSide): readonly [Vec3 | undefined, Vec3 | undefined] {
  const { first, firstOffset: i, second, secondOffset: j } = ends;
  const across = (k: number) => (second[j + k] ?? 0) - (first[i + k] ?? 0);
  const ruling: Vec3 = [across(0), across(1), across(2)];
  const own = fan === "first" ? undefined : square(first, i, ruling);
  const other = fan === "second" ? undefined : square(second, j, ruling);
  return [own ?? other, other ?? own];
}

function square(list: Float64Array, offset: number, [x, y, z]: Vec3): Vec3 | undefined {
  const [a, b, c] = [list[offset + 3] ?? 0, list[offset + 4] ?? 0, list[offset + 5] ?? 0];
  const [nx, ny, nz] = [b * z - c * y, c * x - a * z, a * y - b * x];
  const length2 = x * x + y * y + z * z;
  return nx * nx + ny * ny + nz * nz < 1e-14 * length2 ? undefined : [nx, ny, nz];
}

function angle([ax, ay, az]: Vec3, [bx, by, bz]: Vec3): number {
  const [cx, cy, cz] = [ay * bz - az * by, az * bx - ax * bz, ax * by - ay * bx];
  return Math.atan2(Math.sqrt(cx * cx + cy * cy + cz * cz), ax * bx + ay * by + az * bz);
}
