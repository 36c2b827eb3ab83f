import { at, type FlatPoint } from "../foundation/index.ts";
import { developRuled, type RuledPlace } from "../rulings/index.ts";
import type { TransitionSheet } from "../surfaces/index.ts";

/** A place of a ruled chart, and how far beyond its strip the point lies, as a share of the ruling. */
export interface NearRuledPlace extends RuledPlace {
  readonly beyond: number;
}

/**
 * From the flat pattern of a transition (right or whole hand) back to its chart: the sweep and share of the place that lies
 * there, on the strip that is nearest. Good to some hundredths of a mm.
 */
export function ruledPlaces(sheet: TransitionSheet): (flat: FlatPoint) => NearRuledPlace {
  const { surface } = sheet.chart;
  const ladders = sheet.strips.map(({ shares, shift }) => {
    const { flatAt } = developRuled(surface, sheet.depths.neutralMm, shares);
    const place = (sMm: number, t: number): FlatPoint => {
      const { u, v } = flatAt({ sMm, t });
      return { u: u + shift.u, v: v + shift.v };
    };
    const rungs = Array.from({ length: RUNGS + 1 }, (_, i): FlatRung => {
      const sMm = (surface.lengthSMm * i) / RUNGS;
      return { sMm, from: place(sMm, shares[0]), to: place(sMm, shares[1]) };
    });
    return { shares, rungs };
  });
  return (flat) => {
    const tries = ladders.map(({ shares, rungs }) => {
      const { sMm, share, outsideMm } = rungAt(rungs, flat);
      const within = Math.min(1, Math.max(0, share));
      const span = shares[1] - shares[0];
      return { sMm, t: shares[0] + span * within, beyond: span * (share - within), outsideMm };
    });
    const { sMm, t, beyond } = tries.reduce((best, one) => (one.outsideMm < best.outsideMm ? one : best));
    return { sMm, t, beyond };
  };
}

/** A ruling of one strip in the flat, and where it stands in the sweep. */
interface FlatRung {
  readonly sMm: number;
  readonly from: FlatPoint;
  readonly to: FlatPoint;
}

/** Rulings are looked up among so many, and between two of them by straight interpolation. */
const RUNGS = 160;

/** Between which rungs a flat point lies, where along them, and how far off the strip. */
function rungAt(
  rungs: readonly FlatRung[],
  p: FlatPoint,
): { readonly sMm: number; readonly share: number; readonly outsideMm: number } {
  const beside = ({ from, to }: FlatRung) =>
    ((to.u - from.u) * (p.v - from.v) - (to.v - from.v) * (p.u - from.u)) /
    (Math.hypot(to.u - from.u, to.v - from.v) || 1);
  const along = ({ from, to }: FlatRung) => {
    const square = (to.u - from.u) ** 2 + (to.v - from.v) ** 2;
    return square === 0 ? 0 : ((to.u - from.u) * (p.u - from.u) + (to.v - from.v) * (p.v - from.v)) / square;
  };
  let best = { sMm: 0, share: 0, outsideMm: Number.POSITIVE_INFINITY };
  for (let i = 1; i < rungs.length; i++) {
    const [a, b] = [at(rungs, i - 1), at(rungs, i)];
    const [da, db] = [beside(a), beside(b)];
    const part = da === db ? 0 : Math.min(1, Math.max(0, da / (da - db)));
    const rung = {
      sMm: a.sMm + (b.sMm - a.sMm) * part,
      from: mix(a.from, b.from, part),
      to: mix(a.to, b.to, part),
    };
    const share = along(rung);
    const within = Math.min(1, Math.max(0, share));
    const foot = mix(rung.from, rung.to, within);
    const outsideMm = Math.hypot(p.u - foot.u, p.v - foot.v);
    if (outsideMm < best.outsideMm) best = { sMm: rung.sMm, share, outsideMm };
  }
  return best;
}

const mix = (a: FlatPoint, b: FlatPoint, part: number): FlatPoint => ({
  u: a.u + (b.u - a.u) * part,
  v: a.v + (b.v - a.v) * part,
});
