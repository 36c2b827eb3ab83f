import type { FlatPoint, SpacePoint } from "../../../core/foundation/index.ts";
import type { FoldedPlate, FoldedWing, PlateLoop, PlatePart } from "../../../core/plates/index.ts";

/** Measures of plates by the tests' own arithmetic: no function of the core is used. */

export const corner = <T>(points: readonly T[], i: number): T => {
  const point = points.at(i);
  if (point === undefined) throw new Error("no such corner");
  return point;
};

export const minus = (a: SpacePoint, b: SpacePoint): SpacePoint => ({
  x: a.x - b.x,
  y: a.y - b.y,
  z: a.z - b.z,
});
export const cross = (a: SpacePoint, b: SpacePoint): SpacePoint => ({
  x: a.y * b.z - a.z * b.y,
  y: a.z * b.x - a.x * b.z,
  z: a.x * b.y - a.y * b.x,
});
export const dot = (a: SpacePoint, b: SpacePoint): number => a.x * b.x + a.y * b.y + a.z * b.z;
export const lengthOf = (a: SpacePoint): number => Math.sqrt(dot(a, a));
export const apart = (a: SpacePoint, b: SpacePoint): number => lengthOf(minus(a, b));
export const flatApart = (a: FlatPoint, b: FlatPoint): number => Math.hypot(a.u - b.u, a.v - b.v);

export const polygonOf = ({ edges }: PlateLoop): readonly FlatPoint[] =>
  edges.flatMap(({ points }) => points.slice(0, -1));

export function shoelaceMm2(points: readonly FlatPoint[]): number {
  const twice = points.reduce((sum, b, i) => {
    const a = corner(points, i - 1);
    return sum + a.u * b.v - b.u * a.v;
  }, 0);
  return twice / 2;
}

/** Area of a plane polygon in space. */
export function areaInSpace(points: readonly SpacePoint[]): number {
  const origin = corner(points, 0);
  const doubled = points.slice(1, -1).reduce(
    (sum, p, i) => {
      const c = cross(minus(p, origin), minus(corner(points, i + 2), origin));
      return { x: sum.x + c.x, y: sum.y + c.y, z: sum.z + c.z };
    },
    { x: 0, y: 0, z: 0 },
  );
  return lengthOf(doubled) / 2;
}

/** How far a point lies from the outline of a loop. */
export function fromOutlineMm(point: FlatPoint, loop: PlateLoop): number {
  const polygon = polygonOf(loop);
  return Math.min(
    ...polygon.map((b, i) => {
      const a = corner(polygon, i - 1);
      const [du, dv] = [b.u - a.u, b.v - a.v];
      const t = ((point.u - a.u) * du + (point.v - a.v) * dv) / (du * du + dv * dv);
      const held = Math.min(1, Math.max(0, t));
      return Math.hypot(point.u - a.u - held * du, point.v - a.v - held * dv);
    }),
  );
}

/** The mid-surface of a folded wing, from its foot at one end to its free corner: by chords of the bend, and the flange. */
export function middleOf(wing: FoldedWing): {
  readonly bendChordsMm: number;
  readonly turnRad: number;
  readonly radiusMm: number;
} {
  const middles = wing.bend.map(({ air, upper }) => half(corner(air, 0), corner(upper, 0)));
  const chords = middles.slice(1).map((p, i) => apart(p, corner(middles, i)));
  const normals = wing.bend.map(({ air, upper }) => minus(corner(upper, 0), corner(air, 0)));
  const [first, last] = [corner(normals, 0), corner(normals, -1)];
  const turnRad = Math.atan2(lengthOf(cross(first, last)), dot(first, last));
  const steps = chords.length;
  return {
    bendChordsMm: chords.reduce((sum, mm) => sum + mm, 0),
    turnRad,
    // A chord of a circle over an angle s is 2 r sin(s / 2).
    radiusMm: corner(chords, 0) / (2 * Math.sin(turnRad / steps / 2)),
  };
}

const half = (a: SpacePoint, b: SpacePoint): SpacePoint => ({
  x: (a.x + b.x) / 2,
  y: (a.y + b.y) / 2,
  z: (a.z + b.z) / 2,
});

export function onlyPart(plate: FoldedPlate): PlatePart {
  return corner(plate.parts, 0);
}
