import { at, type FlatPoint, type SpacePoint } from "../foundation/index.ts";
import { developRuled, pointOnRuled, rulingAt } from "../rulings/index.ts";
import type { TransitionSheet } from "../surfaces/index.ts";
import { polygonOfLoop } from "./flat-loops.ts";
import type { FlatLoop, FlatRuling } from "./types.ts";

/**
 * Where the rulings that carry a transition's pairing lie on its flat strips, those of each strip apart; where openings
 * bite into the sheet, what is left of each.
 */
export function flatRulings(sheet: TransitionSheet, loops: readonly FlatLoop[]): readonly FlatRuling[] {
  const { surface } = sheet.chart;
  const whole = sheet.strips.flatMap(({ shares, shift }) => {
    const { flatAt } = developRuled(surface, sheet.depths.neutralMm, shares);
    const place = (sMm: number, t: number): FlatPoint => {
      const { u, v } = flatAt({ sMm, t });
      return { u: u + shift.u, v: v + shift.v };
    };
    return surface.rulings.map(({ sMm }): FlatRuling => {
      const { firstMm, secondMm, twistRad } = rulingAt(surface, sMm);
      return {
        from: place(sMm, shares[0]),
        to: place(sMm, shares[1]),
        firstMm,
        secondMm,
        fromSpace: pointOnRuled(surface, { sMm, t: shares[0] }, 0),
        toSpace: pointOnRuled(surface, { sMm, t: shares[1] }, 0),
        twistRad,
      };
    });
  });
  if (sheet.cover === undefined) return whole;
  const polygons = loops.map(polygonOfLoop);
  return whole.flatMap((ruling) => insideOf(ruling, polygons));
}

/** A piece of a ruling shorter than this share of it is a corner, not a piece. */
const LEAST_SHARE = 1e-6;

/** The pieces of a ruling that lie inside polygons, even-odd: between its first and second crossing, and so on. */
function insideOf(ruling: FlatRuling, polygons: readonly (readonly FlatPoint[])[]): readonly FlatRuling[] {
  const shares = polygons
    .flatMap((polygon) =>
      polygon.flatMap((to, i) =>
        crossing(ruling, at(polygon, (i + polygon.length - 1) % polygon.length), to),
      ),
    )
    .sort((a, b) => a - b);
  const pieces: FlatRuling[] = [];
  for (let i = 0; i + 1 < shares.length; i += 2) {
    const [a, b] = [Math.max(0, at(shares, i)), Math.min(1, at(shares, i + 1))];
    if (b - a < LEAST_SHARE) continue;
    pieces.push({
      ...ruling,
      from: mixFlat(ruling.from, ruling.to, a),
      to: mixFlat(ruling.from, ruling.to, b),
      fromSpace: mixSpace(ruling.fromSpace, ruling.toSpace, a),
      toSpace: mixSpace(ruling.fromSpace, ruling.toSpace, b),
    });
  }
  return pieces;
}

/** The share of a ruling's line, beyond its ends too, where it crosses a side of a polygon; one end of the side counts. */
function crossing({ from, to }: FlatRuling, a: FlatPoint, b: FlatPoint): readonly number[] {
  const [du, dv] = [to.u - from.u, to.v - from.v];
  const side = (p: FlatPoint) => du * (p.v - from.v) - dv * (p.u - from.u);
  const [sa, sb] = [side(a), side(b)];
  if (sa < 0 === sb < 0) return [];
  const p = mixFlat(a, b, sa / (sa - sb));
  return [((p.u - from.u) * du + (p.v - from.v) * dv) / (du * du + dv * dv || 1)];
}

const mixFlat = (a: FlatPoint, b: FlatPoint, share: number): FlatPoint => ({
  u: a.u + (b.u - a.u) * share,
  v: a.v + (b.v - a.v) * share,
});

const mixSpace = (a: SpacePoint, b: SpacePoint, share: number): SpacePoint => ({
  x: a.x + (b.x - a.x) * share,
  y: a.y + (b.y - a.y) * share,
  z: a.z + (b.z - a.z) * share,
});
