import { filmMinutes, potLifeMinutes } from "../laminate/index.ts";
import type { LaminateSettings } from "../project/index.ts";
import { mixedKgPerM2 } from "./resin-per-area.ts";
import type { LaidPly, PotCard, SkinSession } from "./types.ts";

/** Work of one pair of hands on a square metre, minutes (common practice; a log of real times is better). */
const PRE_WET_MINUTES = 6;
const FIRST_PLY_MINUTES = 15;
const NEXT_PLY_MINUTES = 12;
const PEEL_PLY_MINUTES = 6;
/** To mix a pot, minutes (common practice). */
const MIX_MINUTES = 5;
/** Work is planned to end within this share of film time and of pot life (common practice). */
const USED_SHARE = 0.6;

/**
 * A face in as few sessions as the film's working time allows: all plies wet on wet, by the stated hands at the stated
 * temperature. Sessions are alike, and so are the pots of each, none larger than the cap. None where it is colder than
 * the resin bears, or without plies.
 */
export function skinSessions(
  areaMm2: number,
  plies: readonly LaidPly[],
  laminate: LaminateSettings,
): readonly SkinSession[] {
  const { resin, shopCelsius, leastCelsius, hands } = laminate;
  if (!resin || plies.length === 0 || shopCelsius < leastCelsius || !(areaMm2 > 0)) return [];
  const workMinutes = USED_SHARE * filmMinutes(resin, shopCelsius);
  const mostMm2 = (1e6 * workMinutes * hands) / minutesPerM2(plies, laminate);
  const count = Math.ceil(areaMm2 / mostMm2 - 1e-9);
  return Array.from({ length: count }, (): SkinSession => {
    const ownMm2 = areaMm2 / count;
    return {
      areaMm2: ownMm2,
      workMinutes: ((ownMm2 / 1e6) * minutesPerM2(plies, laminate)) / hands,
      cards: potCards((ownMm2 / 1e6) * mixedKgPerM2(plies, laminate), laminate),
    };
  });
}

/** The work of one pair of hands on a square metre with all its plies, its pots included. */
function minutesPerM2(plies: readonly LaidPly[], laminate: LaminateSettings): number {
  const pots = mixedKgPerM2(plies, laminate) / laminate.potKg;
  return (
    (laminate.preWetKgPerM2 > 0 ? PRE_WET_MINUTES : 0) +
    FIRST_PLY_MINUTES +
    NEXT_PLY_MINUTES * (plies.length - 1) +
    (laminate.peelPlyKgPerM2 > 0 ? PEEL_PLY_MINUTES : 0) +
    MIX_MINUTES * pots
  );
}

/** The pots of a session: as few as the cap allows, all alike. */
export function potCards(mixedKg: number, laminate: LaminateSettings): readonly PotCard[] {
  const { resin, potKg, hardenerPer100, pigmentShare, shopCelsius } = laminate;
  if (!resin || !(mixedKg > 0)) return [];
  const count = Math.ceil(mixedKg / potKg - 1e-9);
  const eachKg = mixedKg / count;
  const pigmentKg = eachKg * pigmentShare;
  const clearKg = eachKg - pigmentKg;
  const parts =
    hardenerPer100 === undefined
      ? {}
      : {
          resinKg: (clearKg * 100) / (100 + hardenerPer100),
          hardenerKg: (clearKg * hardenerPer100) / (100 + hardenerPer100),
        };
  const useWithinMinutes = USED_SHARE * potLifeMinutes(resin, shopCelsius, eachKg);
  return [{ count, mixedKg: eachKg, ...parts, pigmentKg, useWithinMinutes }];
}
