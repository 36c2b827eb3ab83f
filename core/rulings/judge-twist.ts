import { at } from "../foundation/index.ts";
import { DEVELOPABLE_TWIST_RAD } from "./limits.ts";
import { STRETCH_POINTS } from "./stretch-points.ts";
import { SWEEP, SWEEP_NUMBERS } from "./sweep-ruling.ts";
import type { FanApex, RuledSurface, TwistJudgement, TwistSettings, TwistStation } from "./types.ts";

/** A strip never gets narrower than its own thickness by dividing. */
const MOST_STRIPS = 200;
/** A radius above this is reported as flat. */
const FLAT_RADIUS_MM = 1e9;

/**
 * The strain of pressing a strip onto a twisted sheet, at one ruling. With τ the twist by length, w the strip's width
 * along the ruling, t its thickness and κ the bend square to the ruling: the membrane part τ²w²/12 (Green 1936/37; from
 * memory: half the edge's stretch beyond the mean) and the bending part (t/2)(κ/2 + √(κ²/4 + τ²)), the larger principal
 * curvature at half the thickness.
 */
export function pressStrain({
  twistRadPerMm,
  widthMm,
  curvature,
  thicknessMm,
}: {
  readonly twistRadPerMm: number;
  readonly widthMm: number;
  readonly curvature: number;
  readonly thicknessMm: number;
}): { readonly membrane: number; readonly bending: number } {
  const bend = Math.abs(curvature) / 2;
  return {
    membrane: (twistRadPerMm * widthMm) ** 2 / 12,
    bending: (thicknessMm / 2) * (bend + Math.sqrt(bend * bend + twistRadPerMm * twistRadPerMm)),
  };
}

/**
 * The largest membrane strain that a strip takes without buckling or cracking: 0.3 %, and for wide thin strips
 * 3.6 (t/w)² (common practice, replaced by a trial).
 */
export const membraneLimit = (thicknessMm: number, widthMm: number): number =>
  Math.min(0.003, 3.6 * (thicknessMm / widthMm) ** 2);

/** Twist and bend on the rulings between all stops, in order of s; strains of the whole sheet, undivided. */
export function twistProfile(surface: RuledSurface, thicknessMm: number): readonly TwistStation[] {
  return surface.stretches.flatMap(({ fromMm, toMm, interval, sweeps, offset }) => {
    const fan = at(surface.rulings, interval).fanAfter;
    return STRETCH_POINTS.map((x, index): TwistStation => {
      const o = offset + index * SWEEP_NUMBERS;
      const lengthMm = sweeps[o + SWEEP.lengthMm] ?? 0;
      const twistRad = sweeps[o + SWEEP.twistRad] ?? 0;
      const first = Math.abs(sweeps[o + SWEEP.firstCurvature] ?? 0);
      const second = Math.abs(sweeps[o + SWEEP.secondCurvature] ?? 0);
      const curvature = tighterCurvature(Math.max(first, second), { fan, lengthMm, thicknessMm });
      const twistRadPerMm = lengthMm > 0 ? twistRad / lengthMm : 0;
      const strain = pressStrain({ twistRadPerMm, widthMm: lengthMm, curvature, thicknessMm });
      const sMm = fromMm + x * (toMm - fromMm);
      return {
        sMm,
        lengthMm,
        twistRad,
        curvature,
        membraneStrain: strain.membrane,
        bendStrain: strain.bending,
      };
    });
  });
}

/**
 * The bend at the tighter end of a ruling, 1/mm, from the larger of those that its edges show. The radius grows evenly
 * along the rulings of a fan from none at its apex; it is taken one thickness in, as foam has no memory of anything
 * smaller than its thickness (common practice).
 */
function tighterCurvature(
  curvature: number,
  {
    fan,
    lengthMm,
    thicknessMm,
  }: { readonly fan: FanApex; readonly lengthMm: number; readonly thicknessMm: number },
): number {
  const tight = fan === "none" ? curvature : curvature * Math.max(1, lengthMm / thicknessMm);
  return Math.min(tight, 1 / thicknessMm);
}

/**
 * Whether foam can take the sheet's twist. "developable": twist under 0.1° and radius above the limit on every ruling, no
 * crease. "press down": both strains under their limits. "divide": the least number of strips that brings the membrane
 * part under its limit, which itself grows as strips get narrower, and the whole under the foam's. "not with this foam":
 * bending alone exceeds it. A crease counts as a bend over one thickness: half its angle as strain.
 */
export function judgeTwist(surface: RuledSurface, settings: TwistSettings): TwistJudgement {
  const stations = twistProfile(surface, settings.thicknessMm);
  const largestCreaseRad = Math.max(0, ...surface.creases.map(({ angleRad }) => angleRad));
  const worst = stations.reduce((a, b) => (Math.abs(b.twistRad) > Math.abs(a.twistRad) ? b : a));
  const maxTwistRad = Math.abs(worst.twistRad);
  const tightest = Math.max(...stations.map(({ curvature }) => curvature));
  const leastRadiusMm = 1 / Math.max(tightest, 1 / FLAT_RADIUS_MM);
  const bendStrain = Math.max(largestCreaseRad / 2, ...stations.map((station) => station.bendStrain));
  const isDevelopable =
    maxTwistRad < DEVELOPABLE_TWIST_RAD &&
    leastRadiusMm >= settings.leastRadiusMm &&
    largestCreaseRad < DEVELOPABLE_TWIST_RAD;
  const strips = isDevelopable || bendStrain > settings.strainLimit ? 1 : stripsFor(stations, settings);
  const square = (strips ?? 1) ** 2;
  return {
    verdict: isDevelopable ? "developable" : verdictOf(bendStrain, strips, settings),
    strips: strips ?? 1,
    maxTwistRad,
    atSMm: worst.sMm,
    leastRadiusMm,
    membraneStrain: Math.max(...stations.map(({ membraneStrain }) => membraneStrain / square)),
    pressStrain: Math.max(
      largestCreaseRad / 2,
      ...stations.map((station) => station.membraneStrain / square + station.bendStrain),
    ),
    largestCreaseRad,
  };
}

function verdictOf(bendStrain: number, strips: number | undefined, { strainLimit }: TwistSettings) {
  if (bendStrain > strainLimit || strips === undefined) return "not with this foam";
  return strips === 1 ? "press down" : "divide";
}

/** The least number of strips that keeps every ruling inside both limits; none within MOST_STRIPS. */
function stripsFor(
  stations: readonly TwistStation[],
  { thicknessMm, strainLimit }: TwistSettings,
): number | undefined {
  let strips = 1;
  for (const { membraneStrain, bendStrain, lengthMm } of stations) {
    const fits = (count: number) => {
      const membrane = membraneStrain / count ** 2;
      return membrane <= membraneLimit(thicknessMm, lengthMm / count) && membrane + bendStrain <= strainLimit;
    };
    while (strips <= MOST_STRIPS && !fits(strips)) strips++;
  }
  return strips <= MOST_STRIPS ? strips : undefined;
}
