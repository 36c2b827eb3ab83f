import type { LieSettings } from "../../project/index.ts";
import { MOST_GIVE_MM, MOST_STRAIN_SHARE } from "./judge-line.ts";
import { endsOf, laid, type QuickSupports } from "./quick-laid.ts";
import type { QuickLane } from "./quick-lane.ts";
import { offBeyond, offInSpan } from "./quick-off-shape.ts";
import { pushBeyond, pushInSpan } from "./quick-push.ts";

/**
 * The most that is asked for in stretches of a lane, as `layLane` and `judgeLine` tell it at their coarse look: stretch 0
 * lies before the first support, and one after each. Only those from `first` to before `last` are judged. Sag and bend
 * are laid at once, each span under its mean weight; the three-moment equation is as in `layBeam`.
 */
export function quickShares(
  quick: QuickLane,
  supports: QuickSupports,
  [first, last]: readonly [number, number],
  settings: LieSettings,
): Float64Array {
  const { foam } = quick.lane;
  const { alongMm } = supports;
  const spans = alongMm.length - 1;
  const ends = endsOf(quick, supports);
  const main = laid(quick, alongMm, ends);
  const shares = new Float64Array(spans + 2);
  for (let stretch = Math.max(0, first); stretch < Math.min(last, spans + 2); stretch++) {
    const isSpan = stretch > 0 && stretch <= spans;
    const offMm = isSpan
      ? offInSpan(quick, main, stretch - 1)
      : offBeyond(quick, main, stretch === 0 ? 0 : 1);
    const pushed = isSpan
      ? pushInSpan(quick, main, stretch - 1, settings.pushN)
      : pushBeyond(quick, main, stretch === 0 ? 0 : 1, settings.pushN);
    const strain = foam.thicknessMm / (2 * foam.stiffness * foam.strainLimit);
    const isStrainAsked = pushed.bend * strain < MOST_STRAIN_SHARE * 0.9;
    shares[stretch] = Math.max(
      offMm / settings.toleranceMm,
      pushed.giveMm / MOST_GIVE_MM,
      isStrainAsked ? (pushed.moment * strain) / MOST_STRAIN_SHARE : 0,
    );
  }
  return shares;
}
