/**
 * Points and vectors. Each frame has its own field names, so a plan point cannot pass for a side point:
 * plan {x, y}, side {x, z}, space {x, y, z}, flat {u, v}; all in mm. `Vec2` is the frameless pair that the
 * curve code works on.
 */
export type Vec2 = readonly [number, number];

/** A point seen from above: x rearward, y to the right of the centre line; mm. */
export interface PlanPoint {
  readonly x: number;
  readonly y: number;
}

/** A point in the side view: x rearward, z up from the ground; mm. */
export interface SidePoint {
  readonly x: number;
  readonly z: number;
}

/** A point in space: x rearward, y to the right, z up from the ground; mm, right-handed. */
export interface SpacePoint {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/** A point of a flat pattern seen from the upper face: u rearward along the bend, v to the right; mm. */
export interface FlatPoint {
  readonly u: number;
  readonly v: number;
}

export const add2 = (a: Vec2, b: Vec2): Vec2 => [a[0] + b[0], a[1] + b[1]];
export const subtract2 = (a: Vec2, b: Vec2): Vec2 => [a[0] - b[0], a[1] - b[1]];
export const scale2 = (a: Vec2, factor: number): Vec2 => [a[0] * factor, a[1] * factor];
export const dot2 = (a: Vec2, b: Vec2): number => a[0] * b[0] + a[1] * b[1];
export const cross2 = (a: Vec2, b: Vec2): number => a[0] * b[1] - a[1] * b[0];
// Square roots, not Math.hypot: coordinates are millimetres and cannot overflow, and these run in the inmost loops.
export const length2 = (a: Vec2): number => Math.sqrt(a[0] * a[0] + a[1] * a[1]);
export const distance2 = (a: Vec2, b: Vec2): number => length2([b[0] - a[0], b[1] - a[1]]);
export const interpolate2 = (a: Vec2, b: Vec2, t: number): Vec2 => [
  a[0] + (b[0] - a[0]) * t,
  a[1] + (b[1] - a[1]) * t,
];
/** The unit vector along a; [0, 0] for a zero vector, so that callers test the length first. */
export const unit2 = (a: Vec2): Vec2 => {
  const length = length2(a);
  return length === 0 ? [0, 0] : [a[0] / length, a[1] / length];
};
/** a turned a quarter turn counter-clockwise. */
export const leftOf2 = (a: Vec2): Vec2 => [-a[1], a[0]];

export const addSpace = (a: SpacePoint, b: SpacePoint, factor = 1): SpacePoint => ({
  x: a.x + b.x * factor,
  y: a.y + b.y * factor,
  z: a.z + b.z * factor,
});
export const dotSpace = (a: SpacePoint, b: SpacePoint): number => a.x * b.x + a.y * b.y + a.z * b.z;
export const crossSpace = (a: SpacePoint, b: SpacePoint): SpacePoint => ({
  x: a.y * b.z - a.z * b.y,
  y: a.z * b.x - a.x * b.z,
  z: a.x * b.y - a.y * b.x,
});
export const lengthSpace = (a: SpacePoint): number => Math.hypot(a.x, a.y, a.z);
export const distanceSpace = (a: SpacePoint, b: SpacePoint): number => {
  const [dx, dy, dz] = [b.x - a.x, b.y - a.y, b.z - a.z];
  return Math.sqrt(dx * dx + dy * dy + dz * dz);
};
export const distanceFlat = (a: FlatPoint, b: FlatPoint): number => {
  const [du, dv] = [b.u - a.u, b.v - a.v];
  return Math.sqrt(du * du + dv * dv);
};

export const toPlan = (p: PlanPoint): PlanPoint => ({ x: p.x, y: p.y });
export const toSide = (p: SidePoint): SidePoint => ({ x: p.x, z: p.z });
