import { type Beam, layBeam } from "../../beams/index.ts";
import { at } from "../../foundation/index.ts";
import { spotOnLane } from "./lane-places.ts";
import type { Lane, LiePush } from "./types.ts";

/** A hand presses on a patch so long, mm (common practice). */
export const PATCH_MM = 100;
/**
 * A push spreads over the patch and this share of the span, as floors are reckoned (a code for slabs, from memory). On a
 * strip narrower than the patch only a part of it falls.
 */
export const SPREAD = 0.6;
/** An end that reaches no farther beyond its rib is pushed onto the rib itself, mm. */
export const SHORT_END_MM = 50;
/** Places looked at for the strain under a push. */
const LOOKS = 8;

/** What a hand's push does in the middle of every span, and on ends that reach far beyond their rib. */
export function pushesOn(
  lane: Lane,
  strip: Omit<Beam, "loads">,
  settings: { readonly pushN: number; readonly momentAt: (alongMm: number) => number },
): readonly LiePush[] {
  const { foam, widthMm } = lane;
  const { fromMm, toMm, supports } = strip;
  const spans = supports.slice(1).map(({ atMm }, i): PushedStretch => {
    const startMm = at(supports, i).atMm;
    const middleMm = (startMm + atMm) / 2;
    return { startMm, endMm: atMm, middleMm, spanMm: atMm - startMm, after: i };
  });
  const [first, last] = [at(supports, 0).atMm, at(supports, -1).atMm];
  const ends = [
    {
      startMm: fromMm,
      endMm: first,
      middleMm: fromMm + PATCH_MM / 2,
      spanMm: 2 * (first - fromMm),
      after: 0,
    },
    {
      startMm: last,
      endMm: toMm,
      middleMm: toMm - PATCH_MM / 2,
      spanMm: 2 * (toMm - last),
      after: supports.length - 1,
    },
  ].filter(({ spanMm }) => spanMm > 2 * SHORT_END_MM);
  return [...spans, ...ends].flatMap((stretch): LiePush[] => {
    const { startMm, endMm, middleMm, spanMm } = stretch;
    const acrossMm = Math.min(Math.max(widthMm, PATCH_MM), PATCH_MM + SPREAD * spanMm);
    const nPerMm = settings.pushN / (PATCH_MM * acrossMm);
    const patch = { fromMm: middleMm - PATCH_MM / 2, toMm: middleMm + PATCH_MM / 2, nPerMm };
    const pushed = layBeam({ ...partFelt(strip, stretch.after), loads: [patch] });
    if (!pushed) return [];
    let [deflectionMm, moment, bend] = [0, 0, 0];
    for (let i = 0; i <= LOOKS; i++) {
      const alongMm = startMm + ((endMm - startMm) * i) / LOOKS;
      const bent = settings.momentAt(alongMm);
      deflectionMm = Math.max(deflectionMm, -pushed.heightAt(alongMm));
      moment = Math.max(moment, Math.abs(bent + pushed.momentAt(alongMm)));
      bend = Math.max(bend, Math.abs(bent));
    }
    /** Strain of the outer fibre under a moment, of the foam's limit. */
    const shareOf = (one: number) => (one * foam.thicknessMm) / (2 * foam.stiffness * foam.strainLimit);
    const found = { deflectionMm, strainShare: shareOf(moment), bendShare: shareOf(bend) };
    return [{ at: spotOnLane(lane, middleMm).at, alongMm: middleMm, ...found }];
  });
}

interface PushedStretch {
  readonly startMm: number;
  readonly endMm: number;
  readonly middleMm: number;
  readonly spanMm: number;
  /** The number of the support that it begins at. */
  readonly after: number;
}

/** A push is felt this many supports on: each turns it round and takes three quarters of it. */
const FELT_SUPPORTS = 4;

/** The part of a strip that feels a push beside one of its supports. */
function partFelt(strip: Omit<Beam, "loads">, after: number): Omit<Beam, "loads"> {
  const from = Math.max(0, after - FELT_SUPPORTS);
  const to = Math.min(strip.supports.length, after + FELT_SUPPORTS + 2);
  const supports = strip.supports.slice(from, to);
  return {
    ...strip,
    supports,
    fromMm: from === 0 ? strip.fromMm : at(supports, 0).atMm,
    toMm: to === strip.supports.length ? strip.toMm : at(supports, -1).atMm,
  };
}
