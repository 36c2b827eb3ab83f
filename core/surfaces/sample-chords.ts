import { at, type FlatPoint } from "../foundation/index.ts";
import { type ChordLimits, chordKeeps, isOnStraight } from "./chord-limits.ts";

/** So many halvings end every sampling, however odd the curve. */
const MOST_HALVINGS = 16;

/**
 * Points of a curve from one parameter to another, halved until the chords between them keep their limits in the
 * flat; points on the straight between their neighbours are left out. `sample` gives a point, `flat` its place in
 * the flat.
 */
export function sampleChords<Point>(
  sample: (t: number) => Point,
  flat: (point: Point) => FlatPoint,
  [from, to]: readonly [number, number],
  limits: ChordLimits,
): readonly Point[] {
  const result: Point[] = [sample(from)];
  const refine = (a: number, b: number, start: Point, end: Point, left: number): void => {
    const middle = sample((a + b) / 2);
    const keeps = (point: Point) => chordKeeps(flat(start), flat(point), flat(end), limits);
    // An S-bend symmetric about its middle passes there and is found at its quarters.
    const isFine = keeps(middle) && sagsLittle(flat(start), flat(sample(a + (b - a) / 4)), flat(end), limits);
    if (isFine || left === 0) {
      result.push(end);
      return;
    }
    refine(a, (a + b) / 2, start, middle, left - 1);
    refine((a + b) / 2, b, middle, end, left - 1);
  };
  refine(from, to, at(result, 0), sample(to), MOST_HALVINGS);
  return dropStraight(result, flat);
}

/** Whether a point lies within the sag of a chord; it need not be its middle. */
function sagsLittle(a: FlatPoint, p: FlatPoint, b: FlatPoint, limits: ChordLimits): boolean {
  const chord = Math.hypot(b.u - a.u, b.v - a.v);
  const cross = Math.abs((p.u - a.u) * (b.v - a.v) - (p.v - a.v) * (b.u - a.u));
  return chord === 0 || cross / chord <= limits.sagMm;
}

/** Leaves out points on the straight between the last kept one and the next, to rounding. */
export function dropStraight<Point>(
  points: readonly Point[],
  flat: (point: Point) => FlatPoint,
): readonly Point[] {
  const kept: Point[] = [];
  points.forEach((point, i) => {
    const [before, after] = [kept.at(-1), points[i + 1]];
    if (before === undefined || after === undefined || !isOnStraight(flat(before), flat(point), flat(after)))
      kept.push(point);
  });
  return kept;
}
