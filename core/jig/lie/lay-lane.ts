import { type BeamLoad, layBeam } from "../../beams/index.ts";
import { at } from "../../foundation/index.ts";
import type { LieSettings } from "../../project/index.ts";
import { alongAt, forcedAt, spotOnLane } from "./lane-places.ts";
import { pushesOn } from "./push-on-lane.ts";
import type { Lane, LaneSupport, LieLine, LieStation } from "./types.ts";

/** Places looked at in each span, and in each end beyond the last rib; and for the strain under a push. */
const LOOKS = { fine: 20, coarse: 8 } as const;
const ROUNDING_MM = 1e-6;
/** Ribs nearer together than this are one support, mm. */
const ONE_SUPPORT_MM = 1;

/**
 * How the foam of a lane lies on its ribs: an elastic strip of its own weight and the wet skin's, over the actual spans,
 * held on every rib and straight beyond the last, against the drawn curve. What keeps it off the curve is small where
 * the curve itself is not, so the strip is taken along its length and its turn is summed (small deflections about the
 * drawn curve). Undefined where fewer than two ribs carry it.
 */
export function layLane(
  lane: Lane,
  supports: readonly LaneSupport[],
  settings: LieSettings,
  looks: keyof typeof LOOKS,
): LieLine | undefined {
  const { places, foam } = lane;
  const held = supports
    .map((support) => ({ ...support, alongMm: alongAt(places, support.placeMm) }))
    .sort((a, b) => a.alongMm - b.alongMm)
    .filter(({ alongMm }, i, all) => i === 0 || alongMm - at(all, i - 1).alongMm > ONE_SUPPORT_MM);
  const [first, last] = [held[0], held[held.length - 1]];
  if (!first || !last) return undefined;
  const fromMm = lane.hangsFree[0] ? at(places, 0).alongMm : first.alongMm;
  const toMm = lane.hangsFree[1] ? at(places, -1).alongMm : last.alongMm;
  const { stiffness } = foam;
  const weighs = weightAlong(lane);
  const level = held.map(({ alongMm }) => ({ atMm: alongMm, heightMm: 0 }));
  const bent = held.map(({ alongMm, liftMm }) => ({
    atMm: alongMm,
    heightMm: forcedAt(places, alongMm) + liftMm,
  }));
  const sagging = layBeam({ stiffness, fromMm, toMm, supports: level, loads: weighs });
  const batten = layBeam({ stiffness, fromMm, toMm, supports: bent, loads: [] });
  if (!sagging || !batten) return undefined;
  const borders = [fromMm, ...level.map(({ atMm }) => atMm), toMm, ...lane.netMm];
  const seenMm = looksBetween(
    borders.filter((mm) => mm >= fromMm && mm <= toMm).sort((a, b) => a - b),
    LOOKS[looks],
  );
  const isNet = ({ alongMm }: { readonly alongMm: number }) =>
    alongMm >= lane.netMm[0] - ROUNDING_MM && alongMm <= lane.netMm[1] + ROUNDING_MM;
  const seen = seenMm.map((alongMm): LieStation => {
    const sagMm = sagging.heightAt(alongMm);
    const battenMm = batten.heightAt(alongMm) - forcedAt(places, alongMm);
    return { ...spotOnLane(lane, alongMm), alongMm, errorMm: sagMm + battenMm, sagMm, battenMm };
  });
  return {
    partId: lane.partId,
    over: lane.over,
    widthMm: lane.widthMm,
    ribIds: held.map(({ ribId }) => ribId),
    ribsMm: held.map(({ alongMm }) => alongMm),
    stations: seen.filter(isNet),
    past: seen.filter((station) => !isNet(station)),
    without: [],
    pushes: pushesOn(
      lane,
      { stiffness, fromMm, toMm, supports: level },
      {
        pushN: settings.pushN,
        momentAt: (alongMm) => sagging.momentAt(alongMm) + batten.momentAt(alongMm),
      },
    ).filter(isNet),
    forcesPerMm: held.map((_, i) => at(sagging.reactionsN, i) + at(batten.reactionsN, i)),
  };
}

/** The weight square to the foam, piece by piece of what lies level enough to be one. */
function weightAlong({ places, foam }: Lane): readonly BeamLoad[] {
  const loads: { fromMm: number; toMm: number; nPerMm: number }[] = [];
  for (let i = 1; i < places.length; i++) {
    const [before, here] = [at(places, i - 1), at(places, i)];
    const nPerMm = foam.weightMPa * ((before.upShare + here.upShare) / 2);
    const last = loads[loads.length - 1];
    if (last && Math.abs(last.nPerMm - nPerMm) < SAME_WEIGHT * nPerMm) last.toMm = here.alongMm;
    else loads.push({ fromMm: before.alongMm, toMm: here.alongMm, nPerMm });
  }
  return loads;
}

/** Loads that differ by less than this share are one. */
const SAME_WEIGHT = 0.002;

/** Places to look at: evenly in every stretch, its ends included. */
function looksBetween(bordersMm: readonly number[], count: number): readonly number[] {
  const looks = bordersMm.slice(1).flatMap((toMm, i) => {
    const fromMm = at(bordersMm, i);
    if (toMm - fromMm < 1e-6) return [];
    return Array.from({ length: count }, (_, k) => fromMm + ((toMm - fromMm) * k) / count);
  });
  return [...looks, at(bordersMm, -1)];
}
