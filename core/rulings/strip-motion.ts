import { addSpace, crossSpace, dotSpace, type SpacePoint } from "../foundation/index.ts";
import type { Sweep } from "./types.ts";

/** A strip of a sheet: between two constant t, at one depth behind the drawn surface. */
export interface StripBounds {
  readonly depthMm: number;
  readonly fromT: number;
  readonly toT: number;
}

/** How the ruling of a strip moves, in the strip's own plane: along and square to it, at both its ends. */
export interface StripMotion {
  readonly lengthMm: number;
  readonly fromAlong: number;
  readonly fromAcross: number;
  readonly toAlong: number;
  readonly toAcross: number;
}

/**
 * The motion of the strip's ends C = (1 − t) A + t B + depth n, split along the ruling and square to it. The part square
 * to the ruling is taken whole, with the sign it has in the sheet, so that edges keep their length when the sheet is
 * twisted.
 */
export function stripMotion(sweep: Sweep, { depthMm, fromT, toT }: StripBounds): StripMotion {
  const square = crossSpace(sweep.normal, sweep.direction);
  const from = split(endVelocity(sweep, depthMm, fromT), sweep.direction, square);
  const to = split(endVelocity(sweep, depthMm, toT), sweep.direction, square);
  return {
    lengthMm: sweep.lengthMm * (toT - fromT),
    fromAlong: from.along,
    fromAcross: from.across,
    toAlong: to.along,
    toAcross: to.across,
  };
}

/** Velocity by s of the place at t on the ruling, at a depth. */
export function endVelocity(sweep: Sweep, depthMm: number, t: number): SpacePoint {
  const { firstVelocity: a, secondVelocity: b, normalVelocity: n } = sweep;
  return {
    x: a.x + t * (b.x - a.x) + depthMm * n.x,
    y: a.y + t * (b.y - a.y) + depthMm * n.y,
    z: a.z + t * (b.z - a.z) + depthMm * n.z,
  };
}

function split(velocity: SpacePoint, direction: SpacePoint, square: SpacePoint) {
  const along = dotSpace(velocity, direction);
  const across = addSpace(velocity, direction, -along);
  const sign = dotSpace(across, square) < 0 ? -1 : 1;
  return { along, across: sign * Math.sqrt(dotSpace(across, across)) };
}
