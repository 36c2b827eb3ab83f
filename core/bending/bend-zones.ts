import { toCurve, walkCurve } from "../curves/index.ts";
import { at, FLAT_RADIUS_MM } from "../foundation/index.ts";
import { developRuled, rulingAt, twistProfile } from "../rulings/index.ts";
import { bendAtPlace, bendSamples, type Sheet, turnAtPlace } from "../surfaces/index.ts";
import type { BendZone } from "./types.ts";

/** Zones shorter than this are noise of the sampling and join their neighbour. */
const SHORTEST_ZONE_MM = 0.01;

/**
 * How each stretch of a sheet bends, in flat u from the sheet's first ruling: radius of the neutral fibre and
 * outer-fibre strain t / (2 R) against the least cold-bend radius of the foam (a multiple of its thickness).
 * Curvature inside a spline is looked at in 32 places a piece.
 */
export function bendZones(sheet: Sheet, leastBendRatio: number): readonly BendZone[] {
  const samples = samplesOf(sheet);
  const limitMm = leastBendRatio * sheet.thicknessMm;
  const zones: BendZone[] = [];
  for (const sample of samples) {
    const zone = zoneOf(sample, sheet, limitMm);
    const last = zones.at(-1);
    const isSame = last && last.verdict === zone.verdict && last.inside === zone.inside;
    if (last && (isSame || zone.toUMm - zone.fromUMm < SHORTEST_ZONE_MM)) {
      zones[zones.length - 1] = mergeZones(last, zone);
    } else {
      zones.push(zone);
    }
  }
  return zones;
}

function samplesOf(sheet: Sheet): readonly BendSample[] {
  switch (sheet.kind) {
    case "section":
      return cylinderSamples(sheet);
    case "fence":
      return uprightSamples(sheet);
    case "transition":
      return ruledSamples(sheet);
  }
}

/** A stretch in flat u with the largest curvature of its neutral fibre, signed toward the inward normal. */
interface BendSample {
  readonly fromUMm: number;
  readonly toUMm: number;
  readonly curvaturePerMm: number;
}

function cylinderSamples(sheet: Extract<Sheet, { kind: "section" }>): readonly BendSample[] {
  const { chart } = sheet;
  const depth = sheet.depths.neutralMm;
  return chart.pieces.flatMap(({ piece, startUMm, lengthUMm, tableUMm }, index): readonly BendSample[] => {
    const flatU = (t: number, u: number) => u - depth * turnAtPlace(chart, { index, t });
    const neutral = (t: number) => {
      const { curvaturePerMm } = bendAtPlace(chart, { index, t });
      return curvaturePerMm / (1 - depth * curvaturePerMm);
    };
    if (piece.kind !== "cubic") {
      return [
        {
          fromUMm: flatU(0, startUMm),
          toUMm: flatU(1, startUMm + lengthUMm),
          curvaturePerMm: piece.kind === "arc" ? neutral(0.5) : 0,
        },
      ];
    }
    const ts = bendSamples(piece);
    return ts.slice(1).map((t, i) => {
      const before = at(ts, i);
      const [a, b] = [neutral(before), neutral(t)];
      return {
        fromUMm: flatU(before, startUMm + share(tableUMm, before)),
        toUMm: flatU(t, startUMm + share(tableUMm, t)),
        curvaturePerMm: Math.abs(a) > Math.abs(b) ? a : b,
      };
    });
  });
}

/**
 * A ruled sheet from stretch to stretch of its sweep, its u taken on the middle line; the bend is that of the tighter
 * end of each ruling on the drawn surface.
 */
function ruledSamples(sheet: Extract<Sheet, { kind: "transition" }>): readonly BendSample[] {
  const { surface } = sheet.chart;
  const { flatAt } = developRuled(surface, sheet.depths.neutralMm);
  const stations = twistProfile(surface, sheet.thicknessMm);
  const isReversed = flatAt({ sMm: 0, t: 0.5 }).u > flatAt({ sMm: surface.lengthSMm, t: 0.5 }).u;
  const samples = stations.map(({ sMm, curvature }, i): BendSample => {
    const [before, after] = [stations[i - 1], stations[i + 1]];
    const from = before ? (before.sMm + sMm) / 2 : 0;
    const to = after ? (after.sMm + sMm) / 2 : surface.lengthSMm;
    const us = [flatAt({ sMm: from, t: 0.5 }).u, flatAt({ sMm: to, t: 0.5 }).u].sort((a, b) => a - b);
    const { firstCurvature, secondCurvature } = rulingAt(surface, sMm);
    const wider = Math.abs(firstCurvature) > Math.abs(secondCurvature) ? firstCurvature : secondCurvature;
    return { fromUMm: at(us, 0), toUMm: at(us, 1), curvaturePerMm: wider < 0 ? -curvature : curvature };
  });
  return isReversed ? samples.toReversed() : samples;
}

/** u gained up to t, read off the table; zone borders need no more than its straight interpolation. */
function share(table: readonly number[], t: number): number {
  const steps = table.length - 1;
  const i = Math.min(Math.floor(t * steps), steps - 1);
  return at(table, i) + (at(table, i + 1) - at(table, i)) * (t * steps - i);
}

function uprightSamples(sheet: Extract<Sheet, { kind: "fence" }>): readonly BendSample[] {
  const pieces = sheet.chart.pieces.map(({ piece }) => piece);
  const walk = walkCurve(toCurve(pieces, false));
  return sheet.chart.pieces.flatMap(({ piece, startUMm, lengthUMm }): readonly BendSample[] => {
    const shares = piece.kind === "cubic" ? bendSamples(piece) : [0, 1];
    return shares.slice(1).map((s, i) => {
      const before = at(shares, i);
      const on = (part: number) =>
        piece.kind === "line" ? 0 : walk(startUMm + lengthUMm * part).curvaturePerMm;
      const inside = 1e-6;
      const [a, b] = [on(before + inside), on(s - inside)];
      return {
        fromUMm: startUMm + lengthUMm * before,
        toUMm: startUMm + lengthUMm * s,
        curvaturePerMm: Math.abs(a) > Math.abs(b) ? a : b,
      };
    });
  });
}

function zoneOf(sample: BendSample, sheet: Sheet, limitMm: number): BendZone {
  const { fromUMm, toUMm, curvaturePerMm } = sample;
  if (Math.abs(curvaturePerMm) * FLAT_RADIUS_MM <= 1) return { fromUMm, toUMm, verdict: "flat", strain: 0 };
  const leastRadiusMm = 1 / Math.abs(curvaturePerMm);
  return {
    fromUMm,
    toUMm,
    verdict: leastRadiusMm >= limitMm * (1 - 1e-9) ? "bend cold" : "too tight",
    leastRadiusMm,
    inside: insideOf(sheet, curvaturePerMm),
    strain: sheet.thicknessMm / (2 * leastRadiusMm),
  };
}

/** Turning toward the inward normal leaves the upper face inside; a fence turning left has its left face inside. */
function insideOf(sheet: Sheet, curvaturePerMm: number): NonNullable<BendZone["inside"]> {
  if (sheet.kind !== "fence") return curvaturePerMm > 0 ? "upper face" : "lower face";
  return curvaturePerMm > 0 ? "outboard face" : "inboard face";
}

function mergeZones(a: BendZone, b: BendZone): BendZone {
  const tighter =
    (a.leastRadiusMm ?? Number.POSITIVE_INFINITY) <= (b.leastRadiusMm ?? Number.POSITIVE_INFINITY) ? a : b;
  return { ...tighter, verdict: a.verdict, fromUMm: a.fromUMm, toUMm: b.toUMm };
}
