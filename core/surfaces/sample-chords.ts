import { at, type FlatPoint } from "../foundation/index.ts";
import { type ChordLimits, chordKeeps, isOnStraight, sagOf } from "./chord-limits.ts";

/** So many halvings end every sampling, however odd the curve. */
const MOST_HALVINGS = 16;

/**
 * An S-bend symmetric about its middle passes there, so a chord is looked at in its quarter too. Of a curve
 * y = k x³ the S between -h and h sags k h³ · 0.385 (2 / √27), and the chord over twice that width, from -h to 3h, misses
 * its middle by 12 k h³: thirty times as much. A chord whose double missed by less than half of that hides no S-bend.
 */
const S_BEND_RATIO = 15;

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
  const refine = (
    a: number,
    b: number,
    ends: readonly [Point, Point],
    left: number,
    isNear: boolean,
  ): void => {
    const [start, end] = ends;
    const middle = sample((a + b) / 2);
    const [flatStart, flatEnd] = [flat(start), flat(end)];
    const isFine =
      chordKeeps(flatStart, flat(middle), flatEnd, limits) &&
      (isNear || sagOf(flatStart, flat(sample(a + (b - a) / 4)), flatEnd) <= limits.sagMm);
    if (isFine || left === 0) {
      result.push(end);
      return;
    }
    const isNearNow = sagOf(flatStart, flat(middle), flatEnd) <= S_BEND_RATIO * limits.sagMm;
    refine(a, (a + b) / 2, [start, middle], left - 1, isNearNow);
    refine((a + b) / 2, b, [middle, end], left - 1, isNearNow);
  };
  refine(from, to, [at(result, 0), sample(to)], MOST_HALVINGS, false);
  return dropStraight(result, flat);
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
