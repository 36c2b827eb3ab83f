import { formatMass, formatNumber } from "../foundation/index.ts";
import type { PotCard, SkinFace } from "./types.ts";

/** What stands before any resin is opened. */
export const SKIN_CAUTION =
  "Epoxy, its hardener and uncured dust sensitise the skin, more with every contact: nitrile or butyl gloves, sleeves taped, fresh air; wash with soap, never with solvent. A pot left full heats itself and can smoke: carry it outdoors. The supplier's data sheet comes before these figures.";

/** The order in which a face is skinned, said once for paper and screen. */
export const skinSteps = (face: SkinFace): readonly string[] => {
  const plies = face.plies.length;
  return [
    "Make the foam ready: glue that stands proud knocked down, outside corners rounded, vacuumed; joints glued with mist dry for a day. The shop is steady or cooling, never warming: warming foam blows bubbles into the skin. The surface is at least 3 °C above the dew point.",
    "Wet the bare foam with resin until it is evenly dull, so that it does not drink from the cloth.",
    plies > 1
      ? `Lay the first ply, wet it out, and lay ${plies === 2 ? "the second" : `the next ${plies - 1}`} on it while it is wet. Nothing is worked after it has begun to gel.`
      : "Lay the ply and wet it out. Nothing is worked after it has begun to gel.",
    "Lay peel ply, along every edge at least where a later session joins, and work the air out from the middle.",
  ];
};

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
