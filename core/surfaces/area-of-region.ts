import { pointOnPiece } from "../curves/index.ts";
import { addSpace, at, crossSpace, gaussShort, lengthSpace, type SpacePoint } from "../foundation/index.ts";
import { areaOfRuled, pointOnRuled, type RuledPlace, type RuledSurface } from "../rulings/index.ts";
import { placeOnTrace } from "./edge-spots.ts";
import { wallFinders } from "./ruled-walls.ts";
import type { RegionEdge, TransitionSheet } from "./types.ts";

/**
 * The area in space of a transition with openings, at the neutral fibre; mm². By Green's theorem in its chart: the area
 * swept by the rulings up to the region's border, A(s, t) = ∫₀ᵗ |X_s × X_t| dt, integrated along that border by s. It
 * never sees the flat pattern.
 */
export function areaOfRegion(sheet: TransitionSheet): number {
  const { surface } = sheet.chart;
  const toleranceMm2 = AREA_RELATIVE * areaOfRuled(surface, sheet.depths.neutralMm);
  const swept = sweptRate(surface, sheet.depths.neutralMm);
  const finders = wallFinders(surface, sheet.depths.neutralMm);
  const sum = sheet.loops.reduce((total, { edges }) => {
    const ends = edges.map((edge) => endsOf(edge));
    return edges.reduce((loopTotal, edge, i) => {
      const [from, to] = at(ends, i);
      const { trace } = edge;
      const own =
        !trace || trace.kind === "ruled"
          ? alongSide(surface, swept, from, to)
          : alongWall(swept, toleranceMm2, (share) => {
              const [x, y] = pointOnPiece(trace.piece, trace.from + (trace.to - trace.from) * share);
              return finders(trace.kind)({ x, y }) ?? from;
            });
      // An edge without length is left out of a loop, and yet the rulings sweep past it.
      const next = at(ends, (i + 1) % edges.length)[0];
      const isOnSide = trace?.kind === "ruled" && from.t === to.t;
      return loopTotal + own + alongSide(surface, swept, { ...to, t: isOnSide ? to.t : next.t }, next);
    }, total);
  }, 0);
  return -surface.side * sum;
}

/** Error allowed for a part of a wall, relative to the area of the whole transition. */
const AREA_RELATIVE = 1e-9;

function endsOf({ trace, points }: RegionEdge): readonly [RuledPlace, RuledPlace] {
  if (trace?.kind === "ruled") return [placeOnTrace(trace, 0), placeOnTrace(trace, 1)];
  const [a, b] = [at(points, 0), at(points, -1)];
  return [
    { sMm: a.u, t: a.v },
    { sMm: b.u, t: b.v },
  ];
}

type SweptRate = (place: RuledPlace) => number;

/** Half of the step over which the way of the rulings' ends is felt, mm of the sweep. */
const FEEL_MM = 1e-4;

/** The area that a ruling sweeps from the first edge to a place on it, by s. */
function sweptRate(surface: RuledSurface, depthMm: number): SweptRate {
  const pointAt = (sMm: number, t: number) => pointOnRuled(surface, { sMm, t }, depthMm);
  return ({ sMm, t }) => {
    if (t === 0) return 0;
    const [low, high] = [Math.max(0, sMm - FEEL_MM), Math.min(surface.lengthSMm, sMm + FEEL_MM)];
    const velocity = (end: number) =>
      scaled(addSpace(pointAt(high, end), pointAt(low, end), -1), 1 / (high - low));
    const ruling = addSpace(pointAt(sMm, 1), pointAt(sMm, 0), -1);
    const [first, second] = [crossSpace(velocity(0), ruling), crossSpace(velocity(1), ruling)];
    const speedAt = (part: number) => lengthSpace(addSpace(scaled(first, 1 - part), second, part));
    return gaussShort(speedAt, 0, t / 2) + gaussShort(speedAt, t / 2, t);
  };
}

const scaled = ({ x, y, z }: SpacePoint, factor: number): SpacePoint => ({
  x: x * factor,
  y: y * factor,
  z: z * factor,
});

/** Along a line of constant t, between the stops of the surface, where the sweep may change at once. */
function alongSide(
  { stretches }: RuledSurface,
  swept: SweptRate,
  from: RuledPlace,
  { sMm }: RuledPlace,
): number {
  if (from.t === 0 || from.sMm === sMm) return 0;
  const [low, high] = [Math.min(from.sMm, sMm), Math.max(from.sMm, sMm)];
  const sum = stretches.reduce((total, { fromMm, toMm }) => {
    const [a, b] = [Math.max(low, fromMm), Math.min(high, toMm)];
    if (b <= a) return total;
    const middle = (a + b) / 2;
    const rate = (s: number) => swept({ sMm: s, t: from.t });
    return total + gaussShort(rate, a, middle) + gaussShort(rate, middle, b);
  }, 0);
  return sMm > from.sMm ? sum : -sum;
}

const PARTS = 8;
const MOST_HALVINGS = 16;

/** Along a wall: s and A as parabolas of its share, halved until these agree with their halves. */
function alongWall(swept: SweptRate, toleranceMm2: number, placeAt: (share: number) => RuledPlace): number {
  const look = (share: number) => {
    const place = placeAt(share);
    return { s: place.sMm, rate: swept(place) };
  };
  type Look = ReturnType<typeof look>;
  const estimate = (a: Look, m: Look, b: Look): number => {
    const [before, middle, after] = [-3 * a.s + 4 * m.s - b.s, b.s - a.s, a.s - 4 * m.s + 3 * b.s];
    return (a.rate * before + 4 * m.rate * middle + b.rate * after) / 6;
  };
  const looks = Array.from({ length: 2 * PARTS + 1 }, (_, i) => look(i / (2 * PARTS)));
  const halve = (
    a: number,
    b: number,
    [start, middle, end]: readonly [Look, Look, Look],
    left: number,
  ): number => {
    const [early, late] = [look(a + (b - a) / 4), look(a + (3 * (b - a)) / 4)];
    const one = estimate(start, middle, end);
    const two = estimate(start, early, middle) + estimate(middle, late, end);
    if (left === 0 || Math.abs(two - one) <= toleranceMm2) return two + (two - one) / 15;
    const m = (a + b) / 2;
    return halve(a, m, [start, early, middle], left - 1) + halve(m, b, [middle, late, end], left - 1);
  };
  return Array.from({ length: PARTS }, (_, i) => {
    const known = [at(looks, 2 * i), at(looks, 2 * i + 1), at(looks, 2 * i + 2)] as const;
    return halve(i / PARTS, (i + 1) / PARTS, known, MOST_HALVINGS);
  }).reduce((a, b) => a + b, 0);
}
