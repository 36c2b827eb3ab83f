import { dotSpace, type PlanPoint, type SpacePoint } from "../../foundation/index.ts";
import {
  type CylinderChart,
  normalAtPlace,
  type placesAtMiddle,
  type SectionSheet,
  spacePointAt,
} from "../../surfaces/index.ts";

/** A point of a section's right section: along its rearward and its upward axis, mm. */
export interface SectionPoint {
  readonly a: number;
  readonly b: number;
}

/** A place on the middle of a section's foam, with the direction in which it runs there, from rearward toward upward. */
export interface MiddleSpot extends SectionPoint {
  readonly directionRad: number;
}

/** The middle of a section's foam as a line in its right section, by the length along it from its first ruling. */
export function middleLine({ chart, depths }: SectionSheet, placeOf: ReturnType<typeof placesAtMiddle>) {
  return (middleMm: number): MiddleSpot => {
    const place = placeOf(middleMm);
    const normal = normalAtPlace(chart, place);
    const spot = spacePointAt(chart, place, chart.pivotYMm, depths.neutralMm);
    const [up, back] = [dotSpace(normal, chart.upward), dotSpace(normal, chart.rearward)];
    return {
      a: dotSpace(spot, chart.rearward),
      b: dotSpace(spot, chart.upward),
      directionRad: Math.atan2(-back, up),
    };
  };
}

/** The point so far inward from a line (negative: outward) where it turns from one direction to another: on the mitre. */
export function offsetPoint(
  { a, b }: SectionPoint,
  [beforeRad, afterRad]: readonly [number, number],
  inwardMm: number,
): SectionPoint {
  const middleRad = (beforeRad + afterRad) / 2;
  const mm = inwardMm / Math.cos((afterRad - beforeRad) / 2);
  return { a: a - mm * Math.sin(middleRad), b: b + mm * Math.cos(middleRad) };
}

/** Rulings over the plan: which one passes over a point, and how high it is there. */
export function rulingsOver({ rearward, upward, ruling, tanHeading }: CylinderChart) {
  const along = ({ a, b }: SectionPoint, axis: "x" | "y" | "z") => a * rearward[axis] + b * upward[axis];
  return {
    /** Where the ruling through a point of the right section passes the plane y = 0. */
    crossingOf: (point: SectionPoint): number => along(point, "x") - along(point, "y") * tanHeading,
    crossingUnder: ({ x, y }: PlanPoint): number => x - y * tanHeading,
    /** The point of a ruling with that y. */
    spotOn: (point: SectionPoint, yMm: number): SpacePoint => {
      const v = (yMm - along(point, "y")) / ruling.y;
      return { x: along(point, "x") + v * ruling.x, y: yMm, z: along(point, "z") + v * ruling.z };
    },
  };
}

/** The upward normal of a ruling at which the right section runs in a direction. */
export function normalOf({ rearward, upward }: CylinderChart, directionRad: number): SpacePoint {
  const [sine, cosine] = [Math.sin(directionRad), Math.cos(directionRad)];
  const mix = (axis: "x" | "y" | "z") => cosine * upward[axis] - sine * rearward[axis];
  return { x: mix("x"), y: mix("y"), z: mix("z") };
}
