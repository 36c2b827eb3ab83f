import { formatMass, formatNumber, toDegrees } from "../foundation/index.ts";
import type { PotCard, SkinFace, SkinPatch, SkinSession } from "./types.ts";

/** What stands before any resin is opened. */
export const SKIN_CAUTION =
  "Epoxy, its hardener and uncured dust sensitise the skin, more with every contact: nitrile or butyl gloves, sleeves taped, fresh air; wash with soap, never with solvent. A pot left full heats itself and can smoke: carry it outdoors. The supplier's data sheet comes before these figures.";

/** A pot in numbers: how many alike, and what goes into each. */
export function potWords({ count, mixedKg, resinKg, hardenerKg, pigmentKg, useWithinMinutes }: PotCard): {
  readonly pots: string;
  readonly each: string;
  readonly resin: string;
  readonly hardener: string;
  readonly pigment: string;
  readonly within: string;
} {
  const grams = (kg: number | undefined) => (kg === undefined ? "?" : `${formatNumber(kg * 1000, 1)} g`);
  return {
    pots: formatNumber(count, 0),
    each: grams(mixedKg),
    resin: grams(resinKg),
    hardener: grams(hardenerKg),
    pigment: pigmentKg > 0 ? grams(pigmentKg) : "none",
    within: `${formatNumber(Math.floor(useWithinMinutes), 0)} min`,
  };
}

/** How the plies of a face compare with what the drawing allows for, and what they weigh. */
export const faceWords = ({
  thicknessMm,
  allowedMm,
  fibreVolumeShare,
  mixedKg,
  massKg,
  face,
}: SkinFace): string =>
  `${formatNumber(thicknessMm, 2)} mm thick${face === "fence sides" ? "" : ` (the drawing allows ${formatNumber(allowedMm, 2)})`}, ${formatNumber(100 * fibreVolumeShare, 0)} % fibre by volume. Mix ${formatMass(mixedKg)}; ${formatMass(massKg)} stay on the tray.`;

/** A session in one sentence: what is laid, and how long it takes. */
export const sessionWords = ({ fieldIds, areaMm2, workMinutes, mixedKg, joinedLater }: SkinSession): string =>
  `${fieldIds.join(", ")}: ${formatNumber(areaMm2 / 1e6, 2)} m², ${formatNumber(workMinutes, 0)} min of work, ${formatMass(mixedKg)} mixed.${
    joinedLater.length > 0
      ? ` Peel ply down to the border with ${joinedLater.join(", ")}: a later session laps onto it. Where that waits for longer than the recoat time, abrade it with 80 grit as well.`
      : ""
  }`;

/** A patch in figures: its code, ply, size along and across the warp, and area. */
export function patchWords(patch: SkinPatch): {
  readonly code: string;
  readonly ply: string;
  readonly warp: string;
  readonly size: string;
  readonly area: string;
} {
  const { lengthMm, widthMm } = patchSize(patch);
  return {
    code: patch.id,
    ply: `${patch.ply}`,
    warp: `${formatNumber(toDegrees(patch.warpRad), 0)}°`,
    size: `${formatNumber(Math.ceil(lengthMm), 0)} × ${formatNumber(Math.ceil(widthMm), 0)}`,
    area: formatNumber(patch.areaMm2 / 1e6, 3),
  };
}

/** How long a patch is along its warp and how wide across, mm. */
export function patchSize({ outlineMm, warpRad }: SkinPatch): {
  readonly lengthMm: number;
  readonly widthMm: number;
} {
  const [cos, sin] = [Math.cos(warpRad), Math.sin(warpRad)];
  const span = (values: readonly number[]) => Math.max(...values) - Math.min(...values);
  return {
    lengthMm: span(outlineMm.map(({ u, v }) => u * cos + v * sin)),
    widthMm: span(outlineMm.map(({ u, v }) => v * cos - u * sin)),
  };
}
