import { at } from "../../foundation/index.ts";
import type { LieLimit, LieLine, LiePush, StretchShare } from "./types.ts";

/** Under a hand's push foam may give so much, mm, and be strained to this share of its limit (common practice). */
export const MOST_GIVE_MM = 5;
export const MOST_STRAIN_SHARE = 0.6;

/**
 * What every stretch of a line is judged by, worst first in each: how far the foam lies off its shape against the form
 * tolerance, and how a push makes it give and strains it. Where the bend alone strains the foam more than a push may, no rib
 * helps, and the strain is not asked for.
 */
export function judgeLine(line: LieLine, toleranceMm: number): readonly StretchShare[] {
  const stretches = line.ribIds.length + 1;
  const best: { by: LieLimit; share: number }[] = Array.from({ length: stretches }, () => ({
    by: "shape" as const,
    share: 0,
  }));
  const offer = (alongMm: number, by: LieLimit, share: number) => {
    const stretch = at(best, stretchAt(line, alongMm));
    if (share > stretch.share) Object.assign(stretch, { by, share });
  };
  for (const { alongMm, errorMm } of line.stations) offer(alongMm, "shape", Math.abs(errorMm) / toleranceMm);
  for (const push of line.pushes) {
    offer(push.alongMm, "give", push.deflectionMm / MOST_GIVE_MM);
    if (isStrainAsked(push)) offer(push.alongMm, "strain", push.strainShare / MOST_STRAIN_SHARE);
  }
  return best.map((one, i) => ({ ...one, ribIds: ribsBeside(line, i) }));
}

/** Whether ribs can keep the strain of a push within its share: not where the bend alone takes it. */
export const isStrainAsked = ({ bendShare }: LiePush): boolean => bendShare < MOST_STRAIN_SHARE * 0.9;

/** The stretch that a place lies in: 0 before the first rib, then one after each. */
export function stretchAt({ ribsMm }: LieLine, alongMm: number): number {
  let i = 0;
  while (i < ribsMm.length && alongMm > at(ribsMm, i) + 1e-6) i++;
  return i;
}

/** The ribs at the ends of a stretch. */
export const ribsBeside = ({ ribIds }: LieLine, stretch: number): readonly string[] =>
  ribIds.slice(Math.max(0, stretch - 1), stretch + 1);
