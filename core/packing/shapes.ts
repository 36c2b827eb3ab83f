import { at } from "../foundation/index.ts";
import { boxOf, type Pole, polesOf } from "./poles.ts";
import { grownRings, ringArea } from "./rings.ts";
import type { PackingLoop, PackingPiece, PackingPoint } from "./types.ts";

/** The grid on which pieces are laid: a thousandth of a millimetre. On it, sides of lines are computed without error. */
export const UNITS_PER_MM = 1000;

/** A piece turned by one of its angles, moved so that its box starts at 0, 0; whole units throughout. */
export interface Variant {
  readonly angleRad: number;
  readonly width: number;
  readonly height: number;
  /** ax, ay, bx, by of each edge. */
  readonly edges: Float64Array;
  /** x, y, radius of each pole. */
  readonly poles: Float64Array;
  /** What was added to the turned piece, units. */
  readonly shiftX: number;
  readonly shiftY: number;
}

/** A piece made ready for laying. */
export interface Shape {
  readonly variants: readonly Variant[];
  readonly area: number;
  /** The longer diagonal of its box, units. */
  readonly diameter: number;
  /** Square root of the area of its convex hull: how much a collision of this piece counts. */
  readonly hullSize: number;
  /** Depth of overlap below which a collision is counted by the decaying branch, units. */
  readonly shallow: number;
}

/** Circles lose this much, so that they stay inside the piece after its corners were put on the grid. */
const POLE_MARGIN = 2;

/** The piece at each of its angles, grown for the clearance. */
export function prepareShape(piece: PackingPiece, clearanceMm: number): Shape {
  const rings = grownRings(piece, clearanceMm);
  const areaMm2 = rings.reduce((sum, ring) => sum + ringArea(ring), 0);
  const poles = polesOf(rings, areaMm2);
  const hull = convexHull(rings.flat());
  const diameter = diameterOf(hull) * UNITS_PER_MM;
  const largest = Math.max(...poles.map(({ radius }) => radius)) * UNITS_PER_MM;
  return {
    variants: piece.anglesRad.map((angleRad) => turnedVariant(rings, poles, angleRad)),
    area: areaMm2 * UNITS_PER_MM ** 2,
    diameter,
    hullSize: Math.sqrt(ringArea(hull)) * UNITS_PER_MM,
    shallow: Math.min(diameter / 100, largest / 2),
  };
}

function turnedVariant(rings: readonly PackingLoop[], poles: readonly Pole[], angleRad: number): Variant {
  const turn = turnBy(angleRad);
  const turned = rings.map((ring) => ring.map((p) => onGrid(turn(p))));
  const box = boxOf(turned.flat());
  const edges = turned.flatMap((ring) =>
    ring.flatMap((b, index) => {
      const a = at(ring, index - 1);
      return a.x === b.x && a.y === b.y
        ? []
        : [a.x - box.minX, a.y - box.minY, b.x - box.minX, b.y - box.minY];
    }),
  );
  return {
    angleRad,
    width: box.maxX - box.minX,
    height: box.maxY - box.minY,
    edges: Float64Array.from(edges),
    poles: Float64Array.from(
      poles.flatMap((pole) => {
        const { x, y } = turn(pole);
        const radius = Math.max(0, pole.radius * UNITS_PER_MM - POLE_MARGIN);
        return [x * UNITS_PER_MM - box.minX, y * UNITS_PER_MM - box.minY, radius];
      }),
    ),
    shiftX: -box.minX,
    shiftY: -box.minY,
  };
}

const onGrid = ({ x, y }: PackingPoint): PackingPoint => ({
  x: Math.round(x * UNITS_PER_MM),
  y: Math.round(y * UNITS_PER_MM),
});

/** Turns points about the origin; quarter turns without rounding. */
export function turnBy(angleRad: number): (p: PackingPoint) => PackingPoint {
  const quarters = angleRad / (Math.PI / 2);
  const isQuarter = Math.abs(quarters - Math.round(quarters)) < 1e-12;
  const exact = (value: number) => (isQuarter ? Math.round(value) : value);
  const [cos, sin] = [exact(Math.cos(angleRad)), exact(Math.sin(angleRad))];
  return ({ x, y }) => ({ x: x * cos - y * sin, y: x * sin + y * cos });
}

/** The convex hull, counter-clockwise (Andrew 1979, monotone chain). */
function convexHull(points: PackingLoop): PackingLoop {
  const sorted = [...points].sort((a, b) => a.x - b.x || a.y - b.y);
  const chain = (list: readonly PackingPoint[]): PackingPoint[] => {
    const kept: PackingPoint[] = [];
    for (const p of list) {
      while (kept.length > 1 && turnsRight(at(kept, -2), at(kept, -1), p)) kept.pop();
      kept.push(p);
    }
    return kept.slice(0, -1);
  };
  return [...chain(sorted), ...chain(sorted.reverse())];
}

const turnsRight = (a: PackingPoint, b: PackingPoint, c: PackingPoint): boolean =>
  (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x) <= 0;

function diameterOf(hull: PackingLoop): number {
  let most = 0;
  for (const a of hull) for (const b of hull) most = Math.max(most, Math.hypot(a.x - b.x, a.y - b.y));
  return most;
}
