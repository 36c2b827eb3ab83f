import type { Metal, Wing } from "../project/index.ts";
import {
  allowanceOfDeductionMm,
  bendAllowanceMm,
  bendDeductionMm,
  kFactorOfAllowance,
  type MetalBend,
  setBackMm,
} from "./bend-allowance.ts";
import type { BendFigures } from "./types.ts";

/** Beyond this a wing would lie back on its base: no brake turns metal so far in one go. */
export const MOST_BEND_RAD = (170 * Math.PI) / 180;
/** Less is no bend: 0.1°. */
export const LEAST_BEND_RAD = Math.PI / 1800;

/**
 * The figures of one bend. The wing's angle must be in range. A typed deduction takes the place of the K factor
 * where it can be true (see `deductionRangeMm`), else the metal's K factor stands. The length of a wing is taken from
 * the mould line of the outer faces, so its flat is that less one set-back. Reliefs are a thickness wide, and so deep
 * that they go a thickness past the bend and R + t past its middle, whichever is more (common practice).
 */
export function bendFigures(wing: Wing, metal: Metal, thicknessMm: number): BendFigures {
  const { insideRadiusMm } = wing;
  const angleRad = Math.abs(wing.angleRad);
  const isUp = wing.angleRad > 0;
  const bend: MetalBend = { insideRadiusMm, thicknessMm, angleRad };
  const typedMm = isTrueDeduction(wing, bend) ? wing.deductionMm : undefined;
  const allowanceMm =
    typedMm === undefined ? bendAllowanceMm(bend, metal.kFactor) : allowanceOfDeductionMm(bend, typedMm);
  const airSetBackMm = setBackMm(isUp ? bend : { ...bend, thicknessMm: 0 });
  return {
    direction: isUp ? "up" : "down",
    angleRad,
    insideRadiusMm,
    thicknessMm,
    kFactor: typedMm === undefined ? metal.kFactor : kFactorOfAllowance(bend, allowanceMm),
    kFactorFrom: typedMm === undefined ? "metal" : "typed deduction",
    allowanceMm,
    deductionMm: typedMm ?? bendDeductionMm(bend, metal.kFactor),
    setBackMm: setBackMm(bend),
    airSetBackMm,
    flangeMm: wing.lengthMm - setBackMm(bend),
    reliefWidthMm: thicknessMm,
    reliefDepthMm: airSetBackMm + Math.max(thicknessMm, insideRadiusMm + thicknessMm - allowanceMm / 2),
  };
}

/** The deductions that a bend can have: its neutral fibre lies in the metal, K from 1 (least) to 0 (most). */
export const deductionRangeMm = (bend: MetalBend): { readonly leastMm: number; readonly mostMm: number } => ({
  leastMm: bendDeductionMm(bend, 1),
  mostMm: bendDeductionMm(bend, 0),
});

function isTrueDeduction(wing: Wing, bend: MetalBend): boolean {
  if (wing.deductionMm === undefined) return false;
  const { leastMm, mostMm } = deductionRangeMm(bend);
  return (
    wing.deductionMm >= leastMm &&
    wing.deductionMm <= mostMm &&
    allowanceOfDeductionMm(bend, wing.deductionMm) > 0
  );
}

/** How much shorter a wing's free edge is at one end than its bend, where that end leans inward by `taperRad`. */
export const narrowedMm = ({ flangeMm }: BendFigures, taperRad: number): number =>
  flangeMm * Math.tan(taperRad);
