import type { Problem } from "../foundation/index.ts";
import { isWithin, RANGES } from "./limits.ts";
import type { Cloth, Coupon, Project } from "./schema.ts";

/** What coupons show in place of typed figures; a figure that no laminate has is left out. */
export interface WeighedFigures {
  readonly fibreMassShare?: number;
  readonly preWetKgPerM2?: number;
}

/**
 * The share of fibre from the last coupon on film, cloth over cloth and resin; what the foam drinks from the last one on
 * foam, the resin beyond what its plies hold at that share (else at the given one).
 */
export function weighedFigures(
  coupons: readonly Coupon[],
  cloths: readonly Cloth[],
  typedShare: number,
): WeighedFigures {
  const onFilm = coupons.findLast(({ on }) => on === "film");
  const onFoam = coupons.findLast(({ on }) => on === "foam");
  const share = onFilm && fibreShare(onFilm, cloths);
  const fibreMassShare = share !== undefined && isWithin(share, RANGES.fibreMassShare) ? share : undefined;
  const drunk = onFoam && uptake(onFoam, cloths, fibreMassShare ?? typedShare);
  const preWetKgPerM2 = drunk !== undefined && isWithin(drunk, RANGES.uptakeKgPerM2) ? drunk : undefined;
  return {
    ...(fibreMassShare !== undefined && { fibreMassShare }),
    ...(preWetKgPerM2 !== undefined && { preWetKgPerM2 }),
  };
}

/** Coupons whose figures cannot be: a slip of the scale or of the keyboard. Problem: coupon-not-believable. */
export function couponProblems(project: Pick<Project, "laminate" | "materials">): readonly Problem[] {
  const { cloths } = project.materials;
  const coupons = project.laminate?.coupons ?? [];
  const typedShare = project.laminate?.fibreMassShare ?? 0.5;
  const share = weighedFigures(coupons, cloths, typedShare).fibreMassShare ?? typedShare;
  return coupons.flatMap((coupon, i): readonly Problem[] => {
    const figure = coupon.on === "film" ? fibreShare(coupon, cloths) : uptake(coupon, cloths, share);
    const range = coupon.on === "film" ? RANGES.fibreMassShare : RANGES.uptakeKgPerM2;
    if (figure !== undefined && isWithin(figure, range)) return [];
    const place = { setting: `laminate.coupons.${i}` };
    const name = `Coupon ${i + 1}`;
    return [
      { kind: "coupon-not-believable", place, name, on: coupon.on, ...(figure !== undefined && { figure }) },
    ];
  });
}

const areaM2 = ({ lengthMm, widthMm }: Coupon): number => (lengthMm * widthMm) / 1e6;

const clothKg = (coupon: Coupon, cloths: readonly Cloth[]): number | undefined => {
  const cloth = cloths.find(({ id }) => id === coupon.clothId);
  return cloth && areaM2(coupon) * cloth.arealKgPerM2 * coupon.plies;
};

function fibreShare(coupon: Coupon, cloths: readonly Cloth[]): number | undefined {
  const cloth = clothKg(coupon, cloths);
  return cloth && cloth / (cloth + coupon.curedKg - coupon.dryKg);
}

function uptake(coupon: Coupon, cloths: readonly Cloth[], fibreMassShare: number): number | undefined {
  const cloth = clothKg(coupon, cloths);
  if (!cloth) return undefined;
  const inPlies = (cloth * (1 - fibreMassShare)) / fibreMassShare;
  return (coupon.curedKg - coupon.dryKg - inPlies) / areaM2(coupon);
}
