import { distance2, dot2, subtract2, type Vec2 } from "../../core/foundation/index.ts";
import type { TypedPlace } from "./types.ts";

/** Whether anything is typed. */
export const isTyped = (typed: TypedPlace): boolean =>
  Object.values(typed).some((value) => value !== undefined);

/**
 * The place that typed numbers mean; the pointer says what they leave open. A length or a direction counts from the last
 * node. Two numbers fix a place: two coordinates, length and direction, or one coordinate with either of these. Of more
 * than two, length and direction go first. A missing coordinate is the pointer's, else the last node's. Undefined when
 * nothing says where, or where numbers exclude each other.
 */
export function placeTyped(
  typed: TypedPlace,
  from: Vec2 | undefined,
  pointer: Vec2 | undefined,
): Vec2 | undefined {
  if (typed.lengthMm === undefined && typed.directionRad === undefined)
    return byCoordinates(typed, from, pointer);
  if (from === undefined) return undefined;
  const axis = typed.first !== undefined ? 0 : typed.second !== undefined ? 1 : undefined;
  if (axis === undefined || (typed.lengthMm !== undefined && typed.directionRad !== undefined))
    return byLength(typed, from, pointer);
  const value = (axis === 0 ? typed.first : typed.second) ?? from[axis];
  return typed.directionRad === undefined
    ? atLengthOn(axis, value, { from, lengthMm: typed.lengthMm ?? 0, pointer })
    : inDirectionOn(axis, value, { from, directionRad: typed.directionRad });
}

function byCoordinates(
  typed: TypedPlace,
  from: Vec2 | undefined,
  pointer: Vec2 | undefined,
): Vec2 | undefined {
  if (typed.first === undefined && typed.second === undefined) return undefined;
  const first = typed.first ?? pointer?.[0] ?? from?.[0];
  const second = typed.second ?? pointer?.[1] ?? from?.[1];
  return first === undefined || second === undefined ? undefined : [first, second];
}

/** In a typed direction it lies beside the pointer: the pointer pulls along it, never back. */
function byLength(typed: TypedPlace, from: Vec2, pointer: Vec2 | undefined): Vec2 | undefined {
  const direction = typed.directionRad ?? (pointer && directionOf(from, pointer)) ?? 0;
  const along: Vec2 = [Math.cos(direction), Math.sin(direction)];
  const pulled = pointer && Math.max(0, dot2(subtract2(pointer, from), along));
  const length = typed.lengthMm ?? pulled;
  if (length === undefined) return undefined;
  return [from[0] + length * along[0], from[1] + length * along[1]];
}

type Axis = 0 | 1;
const onAxis = (axis: Axis, value: number, other: number): Vec2 =>
  axis === 0 ? [value, other] : [other, value];

/** At a distance from the last node and on a coordinate: of the two such places the pointer's side. */
function atLengthOn(
  axis: Axis,
  value: number,
  {
    from,
    lengthMm,
    pointer,
  }: { readonly from: Vec2; readonly lengthMm: number; readonly pointer: Vec2 | undefined },
): Vec2 | undefined {
  const off = value - from[axis];
  const rest = lengthMm * lengthMm - off * off;
  if (rest < 0) return undefined;
  const across = axis === 0 ? 1 : 0;
  const side = pointer && pointer[across] < from[across] ? -1 : 1;
  return onAxis(axis, value, from[across] + side * Math.sqrt(rest));
}

/** Along a direction until a coordinate. */
function inDirectionOn(
  axis: Axis,
  value: number,
  { from, directionRad }: { readonly from: Vec2; readonly directionRad: number },
): Vec2 | undefined {
  const along: Vec2 = [Math.cos(directionRad), Math.sin(directionRad)];
  const length = (value - from[axis]) / along[axis];
  if (!(Math.abs(along[axis]) > LEAST_RUN) || length < 0) return undefined;
  const across = axis === 0 ? 1 : 0;
  return onAxis(axis, value, from[across] + length * along[across]);
}

/** A direction that runs along the coordinate's own line never comes to it. */
const LEAST_RUN = 1e-9;

/** Direction of travel from one point to another, rad from the first axis toward the second. */
export function directionOf(from: Vec2, to: Vec2): number {
  const along = subtract2(to, from);
  return Math.atan2(along[1], along[0]);
}

/** How long a segment is and where it goes. */
export const segmentFigures = (
  from: Vec2,
  to: Vec2,
): { readonly lengthMm: number; readonly directionRad: number } => ({
  lengthMm: distance2(from, to),
  directionRad: directionOf(from, to),
});
