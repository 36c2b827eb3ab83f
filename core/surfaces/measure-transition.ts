import { at, distanceSpace, type SpacePoint } from "../foundation/index.ts";
import { areaOfRuled, lengthOnRuled, pointOnRuled, type RuledSurface } from "../rulings/index.ts";
import { areaOfRegion } from "./area-of-region.ts";
import type { LengthsInSpace } from "./measure-in-space.ts";
import { wallFinder, wallPoint } from "./ruled-walls.ts";
import type { RegionEdge, TransitionSheet } from "./types.ts";

/**
 * The area of a transition in space at the neutral fibre by quadrature: strip by strip, or of what openings leave of it;
 * mm².
 */
export const transitionAreaInSpace = (sheet: TransitionSheet): number =>
  sheet.cover
    ? areaOfRegion(sheet)
    : sheet.strips.reduce(
        (sum, { shares }) => sum + areaOfRuled(sheet.chart.surface, sheet.depths.neutralMm, shares),
        0,
      );

/**
 * The lengths in space of a region edge of a transition, drawn and on the neutral fibre: along a side or a dividing line
 * by quadrature, along a closing edge that of the ruling, along an opening's edge that of the curve on the surface at
 * that depth.
 */
export function transitionEdgeInSpace(
  { chart: { surface }, depths: { neutralMm } }: TransitionSheet,
  { trace }: RegionEdge,
): LengthsInSpace {
  if (!trace) return { drawnMm: 0, atDepthMm: 0 };
  if (trace.kind !== "ruled") {
    const { kind, piece, from, to } = trace;
    const lengthAt = (depthMm: number) =>
      curveLengthMm(wallPoint(surface, wallFinder(surface, kind, depthMm), piece, depthMm), from, to);
    return { drawnMm: lengthAt(0), atDepthMm: lengthAt(neutralMm) };
  }
  const { from, to } = trace;
  if (from.sMm === to.sMm) {
    const lengthMm = distanceSpace(pointOnRuled(surface, from, 0), pointOnRuled(surface, to, 0));
    return { drawnMm: lengthMm, atDepthMm: lengthMm };
  }
  const span = [Math.min(from.sMm, to.sMm), Math.max(from.sMm, to.sMm)] as const;
  return {
    drawnMm: sideLengthMm(surface, 0, from.t, span),
    atDepthMm: sideLengthMm(surface, neutralMm, from.t, span),
  };
}

/** Stops nearer than this are one. */
const SAME_STOP_MM = 1e-7;

/** The length of a side between any two places: between stops of the surface by its quadrature, to these by chords. */
function sideLengthMm(
  surface: RuledSurface,
  depthMm: number,
  t: number,
  [from, to]: readonly [number, number],
): number {
  const stops = surface.stretches
    .flatMap(({ fromMm, toMm }) => [fromMm, toMm])
    .filter((stop) => stop > from - SAME_STOP_MM && stop < to + SAME_STOP_MM);
  const chords = (a: number, b: number): number =>
    b - a <= SAME_STOP_MM ? 0 : curveLengthMm((sMm) => pointOnRuled(surface, { sMm, t }, depthMm), a, b);
  if (stops.length === 0) return chords(from, to);
  const [first, last] = [Math.min(...stops), Math.max(...stops)];
  const whole = last > first ? lengthOnRuled(surface, depthMm, t, [first, last]) : 0;
  return whole + chords(from, first) + chords(last, to);
}

/** Parts that a curve is looked at in to begin with, so that none of its bends is missed. */
const PARTS = 6;
const LENGTH_RELATIVE = 1e-9;
const MOST_HALVINGS = 14;

/** The length of a curve in space: chords, extrapolated, halved until they agree with their halves. */
function curveLengthMm(pointAt: (t: number) => SpacePoint, from: number, to: number): number {
  const points = Array.from({ length: PARTS + 1 }, (_, i) => pointAt(from + ((to - from) * i) / PARTS));
  const chordsMm = points.slice(1).reduce((sum, b, i) => sum + distanceSpace(at(points, i), b), 0);
  const toleranceMm = LENGTH_RELATIVE * chordsMm;
  const estimate = (a: SpacePoint, m: SpacePoint, b: SpacePoint): number => {
    const fine = distanceSpace(a, m) + distanceSpace(m, b);
    return fine + (fine - distanceSpace(a, b)) / 3;
  };
  const halve = (
    a: number,
    b: number,
    known: readonly [SpacePoint, SpacePoint, SpacePoint],
    left: number,
  ): number => {
    const [start, middle, end] = known;
    const [early, late] = [pointAt(a + (b - a) / 4), pointAt(a + (3 * (b - a)) / 4)];
    const one = estimate(start, middle, end);
    const two = estimate(start, early, middle) + estimate(middle, late, end);
    if (left === 0 || Math.abs(two - one) <= toleranceMm) return two + (two - one) / 15;
    const m = (a + b) / 2;
    return halve(a, m, [start, early, middle], left - 1) + halve(m, b, [middle, late, end], left - 1);
  };
  return points.slice(1).reduce((sum, end, i) => {
    const [a, b] = [from + ((to - from) * i) / PARTS, from + ((to - from) * (i + 1)) / PARTS];
    return sum + halve(a, b, [at(points, i), pointAt((a + b) / 2), end], MOST_HALVINGS);
  }, 0);
}
