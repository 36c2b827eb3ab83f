import { mixOf, plyFigures } from "../laminate/index.ts";
import type { ClothPly, LaminateSettings } from "../project/index.ts";
import type { LaidPly } from "./types.ts";

/**
 * The plies of a face from the foam outward, with the resin that each takes: the first also what the bare foam drinks, the
 * last also what the peel ply takes away.
 */
export function laidPlies(plies: readonly ClothPly[], laminate: LaminateSettings): readonly LaidPly[] {
  return plies.map(({ cloth, warpRad }, i): LaidPly => {
    const { thicknessMm, resinKgPerM2 } = plyFigures(cloth.arealKgPerM2, mixOf(laminate));
    const preWet = i === 0 ? laminate.preWetKgPerM2 : 0;
    const peelPly = i === plies.length - 1 ? laminate.peelPlyKgPerM2 : 0;
    return {
      clothId: cloth.id,
      clothName: cloth.name,
      warpRad,
      thicknessMm,
      clothKgPerM2: cloth.arealKgPerM2,
      resinKgPerM2: resinKgPerM2 + preWet + peelPly,
      inPlyKgPerM2: resinKgPerM2,
    };
  });
}

/** What is mixed for a square metre of a face, waste included, kg. */
export const mixedKgPerM2 = (plies: readonly LaidPly[], { wasteShare }: LaminateSettings): number =>
  plies.reduce((sum, { resinKgPerM2 }) => sum + resinKgPerM2, 0) / (1 - wasteShare);

/** What is mixed for cloth with its laps on a face, waste included, kg: the foam drinks and the peel ply takes once. */
export function mixedOnKg(
  faceMm2: number,
  clothMm2: readonly number[],
  plies: readonly LaidPly[],
  laminate: LaminateSettings,
): number {
  if (plies.length === 0) return 0;
  const drunk = (faceMm2 / 1e6) * (laminate.preWetKgPerM2 + laminate.peelPlyKgPerM2);
  return (drunk + inClothKg(clothMm2, plies, ({ inPlyKgPerM2 }) => inPlyKgPerM2)) / (1 - laminate.wasteShare);
}

/** What stays on the tray of it: cloth, its resin, and what the foam drank, kg. */
export function onTrayKg(
  faceMm2: number,
  clothMm2: readonly number[],
  plies: readonly LaidPly[],
  { preWetKgPerM2 }: LaminateSettings,
): number {
  if (plies.length === 0) return 0;
  const inCloth = inClothKg(clothMm2, plies, ({ clothKgPerM2, inPlyKgPerM2 }) => clothKgPerM2 + inPlyKgPerM2);
  return (faceMm2 / 1e6) * preWetKgPerM2 + inCloth;
}

const inClothKg = (
  clothMm2: readonly number[],
  plies: readonly LaidPly[],
  perM2: (ply: LaidPly) => number,
): number => plies.reduce((sum, ply, i) => sum + ((clothMm2[i] ?? 0) / 1e6) * perM2(ply), 0);
