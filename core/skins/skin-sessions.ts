import { filmMinutes, potLifeMinutes } from "../laminate/index.ts";
import type { LaminateSettings } from "../project/index.ts";
import { type FieldGraph, type Grouping, groupFields } from "./group-fields.ts";
import type { PotCard, SkinFaceName, SkinField, SkinSession } from "./types.ts";

/** Work is planned to end within this share of film time and of pot life (common practice). */
const USED_SHARE = 0.6;

/** How long a session may take, minutes; 0 where it is colder than the resin bears. */
export const sessionMinutes = ({ resin, shopCelsius, leastCelsius }: LaminateSettings): number =>
  !resin || shopCelsius < leastCelsius ? 0 : USED_SHARE * filmMinutes(resin, shopCelsius);

/**
 * Fields in as few sessions as the film's working time allows, with the shortest seams between them: for each its session,
 * from 0 in the order of the work. None where it is colder than the resin bears, or without fields.
 */
export function groupSessions(
  minutes: readonly number[],
  seams: FieldGraph["seams"],
  laminate: LaminateSettings,
): Grouping {
  const mostMinutes = sessionMinutes(laminate);
  return mostMinutes <= 0 ? [] : groupFields({ minutes, seams }, mostMinutes);
}

/** The sessions of fields that are grouped so; in each all plies wet on wet, by the stated hands at the stated temperature. */
export function skinSessions(
  face: SkinFaceName,
  fields: readonly SkinField[],
  { seams, grouping }: { readonly seams: FieldGraph["seams"]; readonly grouping: Grouping },
  laminate: LaminateSettings,
): readonly SkinSession[] {
  return [...new Set(grouping)].map((session): SkinSession => {
    const own = fields.filter((_, i) => grouping[i] === session);
    const later = seams.flatMap(({ fields: [a, b] }) => {
      const [one, other] = [grouping[a], grouping[b]];
      if (one === session && other !== undefined && other > session) return [b];
      if (other === session && one !== undefined && one > session) return [a];
      return [];
    });
    const mixedKg = sum(own.map((field) => field.mixedKg));
    return {
      id: `${face} ${session + 1}`,
      fieldIds: own.map(({ id }) => id),
      areaMm2: sum(own.map(({ areaMm2 }) => areaMm2)),
      workMinutes: sum(own.map(({ workMinutes }) => workMinutes)),
      filmMinutes: laminate.resin ? filmMinutes(laminate.resin, laminate.shopCelsius) : 0,
      mixedKg,
      cards: potCards(mixedKg, laminate),
      steps: [],
      joinedLater: [...new Set(later)].sort((a, b) => a - b).flatMap((i) => fields[i]?.id ?? []),
    };
  });
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

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
