import { at, bracketedRoot, type PlanPoint } from "../../foundation/index.ts";
import type { Part } from "../../patterns/index.ts";
import { bendLine, type faceOver, fibreOf, placesAtMiddle, type SectionSheet } from "../../surfaces/index.ts";
import { type MiddleSpot, middleLine, offsetPoint, rulingsOver, type SectionPoint } from "./section-line.ts";

/** The middle of the foam is followed in steps of this, mm: chords of a bend of R 500 miss it by a four-thousandth of a mm. */
const STEP_MM = 1;
/** Straight on beyond both ends by this, mm: as far as foam may run past them. */
const BEYOND_MM = 450;

/** A section's middle as drawn and as it is bent too far, at the same lengths along it. */
export interface OverBentLine {
  readonly drawn: readonly MiddleSpot[];
  readonly bent: readonly MiddleSpot[];
}

/**
 * The middle of a section's foam with every cold bend tighter by 1 / (1 − share), so that a share given back leaves the
 * drawn one; turned and moved so that it keeps its place and its direction where its face `depthMm` behind the drawn
 * surface passes over x. It is straight beyond `netMm`, the lengths between which the foam is drawn.
 */
export function overBentLine(
  sheet: SectionSheet,
  part: Pick<Part, "zones" | "stretches">,
  settings: {
    readonly share: number;
    readonly keepXMm: number;
    readonly depthMm: number;
    readonly netMm: readonly [number, number];
  },
): OverBentLine {
  const { turnAt } = bendLine(sheet);
  const { middleAt } = fibreOf(sheet, part.stretches);
  const [leastMm, mostMm] = settings.netMm;
  const within = (mm: number, from: number, to: number) => Math.min(to, Math.max(from, mm));
  const cold = part.zones.flatMap(({ verdict, fromUMm, toUMm }) =>
    verdict === "bend cold" ? [[middleAt(fromUMm), middleAt(toUMm)] as const] : [],
  );
  const netTurn = (mm: number) => turnAt(within(mm, leastMm, mostMm));
  const coldTurn = (mm: number) =>
    cold.reduce((sum, [from, to]) => sum + netTurn(within(mm, from, to)) - netTurn(from), 0);
  const more = 1 / (1 - settings.share) - 1;
  const spotAt = middleLine(sheet, placesAtMiddle(sheet));
  const drawnAt = (mm: number): MiddleSpot => {
    const spot = spotAt(within(mm, leastMm, mostMm));
    const outMm = mm - within(mm, leastMm, mostMm);
    const { directionRad } = spot;
    return {
      a: spot.a + outMm * Math.cos(directionRad),
      b: spot.b + outMm * Math.sin(directionRad),
      directionRad,
    };
  };
  const keptMm = lengthUnder(sheet, drawnAt, settings);
  const before = Math.ceil((keptMm - leastMm + BEYOND_MM) / STEP_MM);
  const after = Math.ceil((mostMm - keptMm + BEYOND_MM) / STEP_MM);
  const lengths = Array.from({ length: before + after + 1 }, (_, i) => keptMm + (i - before) * STEP_MM);
  const drawn = lengths.map(drawnAt);
  const directions = drawn.map(
    ({ directionRad }, i) => directionRad + more * (coldTurn(at(lengths, i)) - coldTurn(keptMm)),
  );
  return { drawn, bent: walked(directions, at(drawn, before), before) };
}

/** The length along the middle at which a face passes over an x; the end that is nearer where it passes over none. */
function lengthUnder(
  sheet: SectionSheet,
  drawnAt: (mm: number) => MiddleSpot,
  {
    keepXMm,
    depthMm,
    netMm,
  }: {
    readonly keepXMm: number;
    readonly depthMm: number;
    readonly netMm: readonly [number, number];
  },
): number {
  const { crossingOf } = rulingsOver(sheet.chart);
  const missAt = (mm: number): number => {
    const spot = drawnAt(mm);
    const inwardMm = depthMm - sheet.depths.neutralMm;
    return crossingOf(offsetPoint(spot, [spot.directionRad, spot.directionRad], inwardMm)) - keepXMm;
  };
  const [leastMm, mostMm] = netMm;
  if (missAt(leastMm) >= 0) return leastMm;
  if (missAt(mostMm) <= 0) return mostMm;
  return bracketedRoot(missAt, leastMm, mostMm);
}

/** A line of even steps in given directions that passes through a spot at one of them. */
function walked(directions: readonly number[], through: MiddleSpot, keep: number): readonly MiddleSpot[] {
  const spots: MiddleSpot[] = directions.map((directionRad) => ({ ...through, directionRad }));
  const step = (from: number, to: number) => {
    const { a, b } = at(spots, from);
    const middleRad = (at(directions, from) + at(directions, to)) / 2;
    const mm = (to - from) * STEP_MM;
    spots[to] = {
      a: a + mm * Math.cos(middleRad),
      b: b + mm * Math.sin(middleRad),
      directionRad: at(directions, to),
    };
  };
  for (let i = keep; i < directions.length - 1; i++) step(i, i + 1);
  for (let i = keep; i > 0; i--) step(i, i - 1);
  return spots;
}

/** A face of a section bent too far, given the same face as drawn (or faceted, or running past its edges). */
export function overBentFace(
  sheet: SectionSheet,
  line: OverBentLine,
  depthMm: number,
  drawn: ReturnType<typeof faceOver>,
): ReturnType<typeof faceOver> {
  const { spotOn } = rulingsOver(sheet.chart);
  const placeUnder = placesOver(sheet, line.bent, depthMm);
  const from = facePoints(sheet, line.drawn, depthMm);
  const to = facePoints(sheet, line.bent, depthMm);
  return (p) => {
    const place = placeUnder(p);
    if (!place) return undefined;
    const [was, is] = [spotOn(pointAt(from, place), p.y), spotOn(pointAt(to, place), p.y)];
    const own = drawn({ x: was.x, y: was.y });
    if (!own) return undefined;
    const { low } = place;
    const turnedRad = at(line.bent, low).directionRad - at(line.drawn, low).directionRad;
    return { x: p.x, y: p.y, z: own.z + is.z - was.z, normal: turned(sheet, own.normal, turnedRad) };
  };
}

/** How high a face over a line lies above ground, over a plan point; undefined beside it. */
export function heightOver(
  sheet: SectionSheet,
  spots: readonly MiddleSpot[],
  depthMm: number,
): (p: PlanPoint) => number | undefined {
  const { spotOn } = rulingsOver(sheet.chart);
  const placeUnder = placesOver(sheet, spots, depthMm);
  const points = facePoints(sheet, spots, depthMm);
  return (p) => {
    const place = placeUnder(p);
    return place && spotOn(pointAt(points, place), p.y).z;
  };
}

/** Where a ruling of a face passes over the plane y = 0 on one line, told by where it passes on another; the same beside it. */
export function movedCrossing(
  sheet: SectionSheet,
  [from, to]: readonly [readonly MiddleSpot[], readonly MiddleSpot[]],
  depthMm: number,
): (crossingMm: number) => number {
  const { crossingOf } = rulingsOver(sheet.chart);
  const placeUnder = placesOver(sheet, from, depthMm);
  const points = facePoints(sheet, to, depthMm);
  return (crossingMm) => {
    const place = placeUnder({ x: crossingMm, y: 0 });
    return place ? crossingOf(pointAt(points, place)) : crossingMm;
  };
}

/** The points of a face over a line. */
const facePoints = (
  sheet: SectionSheet,
  spots: readonly MiddleSpot[],
  depthMm: number,
): readonly SectionPoint[] =>
  spots.map((spot) =>
    offsetPoint(spot, [spot.directionRad, spot.directionRad], depthMm - sheet.depths.neutralMm),
  );

/** Between which two points of a line, and where between them. */
interface PlaceOnLine {
  readonly low: number;
  readonly share: number;
}

const pointAt = (points: readonly SectionPoint[], { low, share }: PlaceOnLine): SectionPoint => {
  const [a, b] = [at(points, low), at(points, low + 1)];
  return { a: a.a + share * (b.a - a.a), b: a.b + share * (b.b - a.b) };
};

/** Finds the place of a face's line whose ruling passes over a plan point; undefined beyond its ends. */
function placesOver(
  sheet: SectionSheet,
  spots: readonly MiddleSpot[],
  depthMm: number,
): (p: PlanPoint) => PlaceOnLine | undefined {
  const { crossingOf, crossingUnder } = rulingsOver(sheet.chart);
  const crossings = facePoints(sheet, spots, depthMm).map(crossingOf);
  return (p) => {
    const crossing = crossingUnder(p);
    let [low, high] = [0, crossings.length - 1];
    if (crossing < at(crossings, low) || crossing > at(crossings, high)) return undefined;
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (at(crossings, middle) <= crossing) low = middle;
      else high = middle;
    }
    return { low, share: (crossing - at(crossings, low)) / (at(crossings, high) - at(crossings, low)) };
  };
}

/** A normal turned about the rulings, from rearward toward upward. */
function turned(
  { chart: { rearward, upward } }: SectionSheet,
  normal: { readonly x: number; readonly y: number; readonly z: number },
  byRad: number,
): { readonly x: number; readonly y: number; readonly z: number } {
  const on = (axis: typeof rearward) => normal.x * axis.x + normal.y * axis.y + normal.z * axis.z;
  const [back, up] = [on(rearward), on(upward)];
  const [sine, cosine] = [Math.sin(byRad), Math.cos(byRad)];
  const [newBack, newUp] = [back * cosine - up * sine, back * sine + up * cosine];
  const mix = (axis: "x" | "y" | "z") => newBack * rearward[axis] + newUp * upward[axis];
  return { x: mix("x"), y: mix("y"), z: mix("z") };
}
