import { distance2, subtract2, type Vec2 } from "../../core/foundation/index.ts";
import type { TypedPlace } from "./types.ts";

/**
 * The place that typed numbers mean. A length or a direction counts from the last node, and what is missing of
 * the two is taken from the pointer; a missing coordinate is the pointer's, else the last node's. Undefined
 * when nothing says where.
 */
export function placeTyped(
  typed: TypedPlace,
  from: Vec2 | undefined,
  pointer: Vec2 | undefined,
): Vec2 | undefined {
  if (typed.lengthMm !== undefined || typed.directionRad !== undefined) {
    return from === undefined ? undefined : placeByLength(typed, from, pointer);
  }
  if (typed.first === undefined && typed.second === undefined) return undefined;
  const first = typed.first ?? pointer?.[0] ?? from?.[0];
  const second = typed.second ?? pointer?.[1] ?? from?.[1];
  return first === undefined || second === undefined ? undefined : [first, second];
}

function placeByLength(typed: TypedPlace, from: Vec2, pointer: Vec2 | undefined): Vec2 | undefined {
  const length = typed.lengthMm ?? (pointer && distance2(from, pointer));
  const direction = typed.directionRad ?? (pointer && directionOf(from, pointer)) ?? 0;
  if (length === undefined) return undefined;
  return [from[0] + length * Math.cos(direction), from[1] + length * Math.sin(direction)];
}

/** Direction of travel from one point to another, rad from the first axis toward the second. */
export function directionOf(from: Vec2, to: Vec2): number {
  const along = subtract2(to, from);
  return Math.atan2(along[1], along[0]);
}
