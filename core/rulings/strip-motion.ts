import { SWEEP } from "./sweep-ruling.ts";

/** A strip of a sheet: between two constant t, at one depth behind the drawn surface. */
export interface StripBounds {
  readonly depthMm: number;
  readonly fromT: number;
  readonly toT: number;
}

/** The motion of one place on a ruling, in the sheet's own plane there: along the ruling and square to it, by s. */
export interface RulingMotion {
  readonly along: number;
  readonly across: number;
}

/**
 * How the place C = (1 − t) A + t B + depth n of a swept ruling moves, split along the ruling and square to it. The part
 * square to the ruling is taken whole, with the sign it has in the sheet (normal × direction), so that lines keep their
 * length when the sheet is twisted.
 */
export function motionOnRuling(sweeps: Float64Array, o: number, depthMm: number, t: number): RulingMotion {
  const vx = endVelocity(sweeps, o, depthMm, t);
  const vy = endVelocity(sweeps, o + 1, depthMm, t);
  const vz = endVelocity(sweeps, o + 2, depthMm, t);
  const [dx, dy, dz] = [
    n(sweeps, o + SWEEP.direction),
    n(sweeps, o + SWEEP.direction + 1),
    n(sweeps, o + SWEEP.direction + 2),
  ];
  const [nx, ny, nz] = [
    n(sweeps, o + SWEEP.normal),
    n(sweeps, o + SWEEP.normal + 1),
    n(sweeps, o + SWEEP.normal + 2),
  ];
  const along = vx * dx + vy * dy + vz * dz;
  const [x, y, z] = [vx - along * dx, vy - along * dy, vz - along * dz];
  const square = x * (ny * dz - nz * dy) + y * (nz * dx - nx * dz) + z * (nx * dy - ny * dx);
  return { along, across: (square < 0 ? -1 : 1) * Math.sqrt(x * x + y * y + z * z) };
}

/** Velocity by s, along one axis, of the place at t on a swept ruling, at a depth; `o` counts the axis in. */
export const endVelocity = (sweeps: Float64Array, o: number, depthMm: number, t: number): number =>
  (1 - t) * n(sweeps, o + SWEEP.fromVelocity) +
  t * n(sweeps, o + SWEEP.toVelocity) +
  depthMm * n(sweeps, o + SWEEP.normalVelocity);

const n = (list: Float64Array, index: number): number => list[index] ?? 0;
