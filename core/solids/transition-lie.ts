import {
  addSpace,
  at,
  crossSpace,
  distanceFlat,
  dotSpace,
  type FlatPoint,
  type SpacePoint,
} from "../foundation/index.ts";
import { developRuled, pointOnRuled, type RuledSurface, type Ruling, rulingAt } from "../rulings/index.ts";
import type { TransitionSheet } from "../surfaces/index.ts";
import type { FlatRimPoint } from "./rim-of-loop.ts";
import { STEP_RAD } from "./turn-steps.ts";
import type { ChartSpot, RimPoint, SheetLie, StationFrame } from "./types.ts";

/** Rulings that the search for a flat place begins from. */
const RUNGS = 96;
/** A sheet has a ruling in every share of its sweep at least, however little it bends. */
const LEAST_STATIONS = 12;
/** A straight flat edge is curved in the chart: it is divided until it is straight there to so many mm of the flat. */
const STRAIGHT_MM = 0.1;
const MOST_DIVISIONS = 6;

/**
 * How one strip of a transition's flat lies in space. Its chart is that of the ruled sheet, s along and the share of
 * the ruling across, times the ruling's usual length. In a fan, where rulings meet in a point, each corner of the rim
 * there stands on the ruling of its neighbour, so that none is cut off.
 */
export function transitionLie(
  sheet: TransitionSheet,
  stripIndex: number,
  rims: readonly (readonly FlatRimPoint[])[],
): SheetLie {
  const { depths } = sheet;
  const { surface } = sheet.chart;
  const { shares, shift } = at(sheet.strips, stripIndex);
  const development = developRuled(surface, depths.neutralMm, shares);
  const scaleMm = rulingAt(surface, surface.lengthSMm / 2).lengthMm || 1;
  const flatAt = ({ along, across }: ChartSpot): FlatPoint => {
    const { u, v } = development.flatAt({ sMm: along, t: across / scaleMm });
    return { u: u + shift.u, v: v + shift.v };
  };
  const strip: Strip = { surface, flatAt, ends: [shares[0] * scaleMm, shares[1] * scaleMm] };
  const spotOf = spotFinder(strip);
  const onRuled = ({ along, across }: ChartSpot, depthMm: number) =>
    pointOnRuled(surface, { sMm: along, t: across / scaleMm }, depthMm);
  const middle = (shares[0] + shares[1]) / 2;
  const frameAt = (along: number): StationFrame => {
    const spot = { along, across: middle * scaleMm };
    const { direction, normal } = rulingAt(surface, along);
    const square = crossSpace(normal, direction);
    const angleRad = development.rulingAngleAt(along);
    const [cos, sin] = [Math.cos(angleRad), Math.sin(angleRad)];
    return {
      place: onRuled(spot, depths.neutralMm),
      flat: flatAt(spot),
      alongU: addSpace(scaled(direction, cos), square, -sin),
      alongV: addSpace(scaled(direction, sin), square, cos),
      normal,
    };
  };
  const spaceAt = (spot: ChartSpot, { u, v }: FlatPoint, depthMm: number): SpacePoint => {
    const place = onRuled(spot, depthMm);
    if (u === 0 && v === 0) return place;
    const { alongU, alongV } = frameAt(spot.along);
    return addSpace(addSpace(place, alongU, u), alongV, v);
  };
  return {
    rims: rims.map((rim) => rimOnChart(strip, spotOf, rim)),
    stationsMm: stationsOf(surface),
    lowerMm: depths.coreLowerMm,
    middleMm: depths.neutralMm,
    upperMm: depths.coreUpperMm,
    spaceAt,
    flatAt,
    frameAt,
  };
}

/** How far a flat point lies off a strip, mm: 0 inside. */
export function offStripMm(sheet: TransitionSheet, stripIndex: number, p: FlatPoint): number {
  const { surface } = sheet.chart;
  const { shares, shift } = at(sheet.strips, stripIndex);
  const { flatAt } = developRuled(surface, sheet.depths.neutralMm, shares);
  const vs = Array.from({ length: 9 }, (_, k) => (k * surface.lengthSMm) / 8).flatMap((sMm) =>
    shares.map((t) => flatAt({ sMm, t }).v + shift.v),
  );
  return Math.max(0, Math.min(...vs) - p.v, p.v - Math.max(...vs));
}

const scaled = ({ x, y, z }: Ruling["direction"], factor: number) => ({
  x: x * factor,
  y: y * factor,
  z: z * factor,
});

interface Strip {
  readonly surface: RuledSurface;
  readonly flatAt: (spot: ChartSpot) => FlatPoint;
  /** Across at both of its edges. */
  readonly ends: readonly [number, number];
}

/** Rulings between which the sheet turns little, those where fans begin and end, and some at least. */
function stationsOf(surface: RuledSurface): readonly number[] {
  const { lengthSMm, rulings } = surface;
  const borders = rulings.flatMap(({ sMm, fanAfter }, i) =>
    i > 0 && at(rulings, i - 1).fanAfter !== fanAfter ? [sMm] : [],
  );
  const steps = LEAST_STATIONS * 8;
  const all = [...borders, ...Array.from({ length: steps + 1 }, (_, k) => (k * lengthSMm) / steps)].sort(
    (a, b) => a - b,
  );
  const kept: number[] = [];
  let last: { readonly ruling: Ruling; readonly step: number } | undefined;
  all.forEach((sMm, step) => {
    const ruling = rulingAt(surface, sMm);
    const isDue =
      last === undefined ||
      borders.includes(sMm) ||
      step - last.step >= 8 ||
      Math.acos(Math.min(1, dotSpace(ruling.normal, last.ruling.normal))) > STEP_RAD ||
      Math.acos(Math.min(1, dotSpace(ruling.direction, last.ruling.direction))) > 3 * STEP_RAD;
    if (!isDue) return;
    kept.push(sMm);
    last = { ruling, step };
  });
  return kept;
}

/** A ruling through a point is taken before one beside it, unless the sheet ends so much farther off. */
const NOT_BETWEEN_MM = 60;

interface Found {
  readonly spot: ChartSpot;
  /** How far the flat point lies off the strip there. */
  readonly offMm: number;
}

/** Finds the place of a flat point on the strip's chart: between which two rulings it lies, then by the secant. */
function spotFinder({ surface, flatAt, ends }: Strip): (p: FlatPoint) => ChartSpot {
  const ruleAt = (along: number) => {
    const [from, to] = [flatAt({ along, across: ends[0] }), flatAt({ along, across: ends[1] })];
    return { along, from, to, lengthMm: distanceFlat(from, to) || 1 };
  };
  type Rule = ReturnType<typeof ruleAt>;
  const beside = ({ from, to, lengthMm }: Rule, p: FlatPoint) =>
    ((to.u - from.u) * (p.v - from.v) - (to.v - from.v) * (p.u - from.u)) / lengthMm;
  const rules = Array.from({ length: RUNGS + 1 }, (_, k) => ruleAt((surface.lengthSMm * k) / RUNGS));
  const foundOn = (rule: Rule, p: FlatPoint): Found => {
    const { from, to, lengthMm, along } = rule;
    const share =
      ((to.u - from.u) * (p.u - from.u) + (to.v - from.v) * (p.v - from.v)) / (lengthMm * lengthMm);
    const within = Math.min(1, Math.max(0, share));
    return {
      spot: { along, across: ends[0] + (ends[1] - ends[0]) * share },
      offMm: Math.hypot((share - within) * lengthMm, beside(rule, p)),
    };
  };
  const between = (a: Rule, b: Rule, p: FlatPoint): Found => {
    let [low, high, fLow, fHigh] = [a, b, beside(a, p), beside(b, p)];
    if (fLow > 0 === fHigh > 0) {
      const near = foundOn(Math.abs(fLow) < Math.abs(fHigh) ? a : b, p);
      return { ...near, offMm: near.offMm + NOT_BETWEEN_MM };
    }
    for (let i = 0; i < 12 && high.along - low.along > 1e-7; i++) {
      const share = i % 3 === 2 ? 0.5 : fLow / (fLow - fHigh);
      const rule = ruleAt(low.along + (high.along - low.along) * share);
      const f = beside(rule, p);
      if (Math.abs(f) < 1e-6) return foundOn(rule, p);
      if (f > 0 === fLow > 0) [low, fLow] = [rule, f];
      else [high, fHigh] = [rule, f];
    }
    return foundOn(Math.abs(fLow) < Math.abs(fHigh) ? low : high, p);
  };
  return (p) => {
    let best: Found | undefined;
    for (let k = 0; k + 1 < rules.length; k++) {
      const found = between(at(rules, k), at(rules, k + 1), p);
      if (!best || found.offMm < best.offMm - 1e-6) best = found;
    }
    return beyondEnds(at(rules, 0), at(rules, -1), p) ?? at([best], 0)?.spot ?? { along: 0, across: 0 };
  };

  /** Before the first ruling and after the last the sheet goes on flat, square to it. */
  function beyondEnds(first: Rule, last: Rule, p: FlatPoint): ChartSpot | undefined {
    const inner = flatAt({ along: surface.lengthSMm / 2, across: (ends[0] + ends[1]) / 2 });
    for (const rule of [first, last]) {
      const { spot } = foundOn(rule, p);
      const share = (spot.across - ends[0]) / (ends[1] - ends[0]);
      const off = beside(rule, p);
      if (off > 0 === beside(rule, inner) > 0 || Math.abs(off) < 1e-3 || share < -0.2 || share > 1.2)
        continue;
      return { ...spot, along: rule === first ? -Math.abs(off) : surface.lengthSMm + Math.abs(off) };
    }
    return undefined;
  }
}

type SpotOf = (p: FlatPoint) => ChartSpot;

/** A rim in the chart: long edges divided where they are curved there, corners in a fan's point doubled. */
function rimOnChart(strip: Strip, spotOf: SpotOf, rim: readonly FlatRimPoint[]): readonly RimPoint[] {
  const fans = fanSpans(strip);
  const toChart = ({ at: p, offset }: FlatRimPoint): RimPoint => ({ ...spotOf(p), offset });
  const corners = rim.map((point) => ({
    point,
    spot: toChart(point),
    fan: fans.find(({ apex }) => distanceFlat(apex, point.at) < 0.01),
  }));
  const doubled = corners.flatMap((corner, i) => {
    if (!corner.fan) return [corner];
    const { from, to, across } = corner.fan;
    const before = at(corners, (i + corners.length - 1) % corners.length).spot.along;
    const after = at(corners, (i + 1) % corners.length).spot.along;
    return [before, after].map((along) => {
      const { offset } = corner.point;
      return { ...corner, spot: { along: Math.min(to, Math.max(from, along)), across, offset } };
    });
  });
  return doubled.flatMap((corner, i) => {
    const next = at(doubled, (i + 1) % doubled.length);
    if (corner.point === next.point) return [corner.spot];
    return [corner.spot, ...divided(strip, [corner, next], toChart, MOST_DIVISIONS)];
  });
}

interface ChartCorner {
  readonly point: FlatRimPoint;
  readonly spot: RimPoint;
}

function divided(
  strip: Strip,
  [a, b]: readonly [ChartCorner, ChartCorner],
  toChart: (point: FlatRimPoint) => RimPoint,
  divisions: number,
): readonly RimPoint[] {
  if (divisions === 0) return [];
  const middle: FlatRimPoint = {
    at: halfway(a.point.at, b.point.at),
    offset: halfway(a.point.offset, b.point.offset),
  };
  const drawn = strip.flatAt({
    along: (a.spot.along + b.spot.along) / 2,
    across: (a.spot.across + b.spot.across) / 2,
  });
  if (distanceFlat(drawn, middle.at) < STRAIGHT_MM) return [];
  const corner = { point: middle, spot: toChart(middle) };
  return [
    ...divided(strip, [a, corner], toChart, divisions - 1),
    corner.spot,
    ...divided(strip, [corner, b], toChart, divisions - 1),
  ];
}

const halfway = (a: FlatPoint, b: FlatPoint): FlatPoint => ({ u: (a.u + b.u) / 2, v: (a.v + b.v) / 2 });

/** The stretches of the sweep whose rulings start from one flat point, and that point. */
function fanSpans({ surface, flatAt, ends }: Strip) {
  return surface.rulings.flatMap((node, i) => {
    const next = surface.rulings[i + 1];
    if (node.fanAfter === "none" || !next) return [];
    const across = node.fanAfter === "first" ? ends[0] : ends[1];
    const apex = flatAt({ along: (node.sMm + next.sMm) / 2, across });
    const isAtEdge = distanceFlat(apex, flatAt({ along: node.sMm, across })) < 0.01;
    return isAtEdge ? [{ from: node.sMm, to: next.sMm, across, apex }] : [];
  });
}
