import { toCurve, walkCurve } from "../curves/index.ts";
import { at } from "../foundation/index.ts";
import { developRuled, rulingAt, twistProfile } from "../rulings/index.ts";
import { bendAtPlace, bendSamples, type Sheet, turnAtPlace } from "../surfaces/index.ts";

/** How a sheet bends along the middle of its foam, from its first ruling. Curvature inside a spline is looked at in 32 places a piece. */
export function bendSamplesOf(sheet: Sheet): readonly BendSample[] {
  switch (sheet.kind) {
    case "section":
      return cylinderSamples(sheet);
    case "fence":
      return uprightSamples(sheet);
    case "transition":
      return ruledSamples(sheet);
  }
}

/** A stretch with the largest curvature of the middle of its foam, signed toward the inward normal (of a fence to the left). */
export interface BendSample {
  readonly fromMm: number;
  readonly toMm: number;
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
          fromMm: flatU(0, startUMm),
          toMm: flatU(1, startUMm + lengthUMm),
          curvaturePerMm: piece.kind === "arc" ? neutral(0.5) : 0,
        },
      ];
    }
    const ts = bendSamples(piece);
    return ts.slice(1).map((t, i) => {
      const before = at(ts, i);
      const [a, b] = [neutral(before), neutral(t)];
      return {
        fromMm: flatU(before, startUMm + share(tableUMm, before)),
        toMm: flatU(t, startUMm + share(tableUMm, t)),
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
    return { fromMm: at(us, 0), toMm: at(us, 1), curvaturePerMm: wider < 0 ? -curvature : curvature };
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
        fromMm: startUMm + lengthUMm * before,
        toMm: startUMm + lengthUMm * s,
        curvaturePerMm: Math.abs(a) > Math.abs(b) ? a : b,
      };
    });
  });
}
