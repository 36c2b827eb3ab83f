/** One bend of sheet metal: the radius of its hollow side, the metal's thickness, and the angle it is turned by. */
export interface MetalBend {
  readonly insideRadiusMm: number;
  readonly thicknessMm: number;
  /** How far the flange is turned out of the flat, rad, from 0 to less than π; never negative. */
  readonly angleRad: number;
}

/**
 * The flat length that a bend takes, mm: the arc of the fibre that keeps its length, (R + K t) A. `kFactor` is where
 * that fibre lies, as a fraction of the thickness from the inside face. Source: NAVEDTRA 14119, ch. 13, has K = 1/2;
 * metals in air bending have 0.35 to 0.45.
 */
export const bendAllowanceMm = (bend: MetalBend, kFactor: number): number =>
  (bend.insideRadiusMm + kFactor * bend.thicknessMm) * bend.angleRad;

/**
 * From the mould line (where the outer faces would meet) back to where the bend begins, mm: (R + t) tan(A / 2).
 * Source: FAA-H-8083-31, *Aviation Maintenance Technician Handbook, Airframe*, vol. 1, ch. 4.
 */
export const setBackMm = (bend: MetalBend): number =>
  (bend.insideRadiusMm + bend.thicknessMm) * Math.tan(bend.angleRad / 2);

/**
 * What is taken off the sum of two outside lengths to get the flat, mm: twice the set-back less the allowance. It is
 * what a trial bend shows: both legs measured outside, less the strip before it was bent.
 */
export const bendDeductionMm = (bend: MetalBend, kFactor: number): number =>
  2 * setBackMm(bend) - bendAllowanceMm(bend, kFactor);

/** The allowance that belongs to a measured deduction, mm. */
export const allowanceOfDeductionMm = (bend: MetalBend, deductionMm: number): number =>
  2 * setBackMm(bend) - deductionMm;

/** The K factor that belongs to an allowance; the sheet must have a thickness and the bend an angle. */
export const kFactorOfAllowance = (bend: MetalBend, allowanceMm: number): number =>
  (allowanceMm / bend.angleRad - bend.insideRadiusMm) / bend.thicknessMm;
