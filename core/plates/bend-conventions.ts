import type { MetalBend } from "./bend-allowance.ts";

/**
 * The K factor behind the handbook rule for right angles, L = c t + 1.57 R: K = c / (π / 2). Usual c: 0.55 soft brass
 * and copper, 0.64 half-hard brass and copper, soft steel and aluminium, 0.71 hard. Source: *Machinery's Handbook*
 * (from memory; the K of aluminium was seen in a copy of its table).
 */
export const kFactorOfRightAngle = (c: number): number => c / (Math.PI / 2);

/**
 * The empirical allowance for aircraft metals, (0.0173 R + 0.0078 t) N with N in degrees; any one unit of length.
 * Source: US Navy aviation structural training text, p. 13-19. Workshop tables also print 0.01743 for the first factor.
 */
export const aircraftAllowance = (
  bend: { readonly insideRadius: number; readonly thickness: number; readonly angleDegrees: number },
  radiusFactor = 0.0173,
): number => (radiusFactor * bend.insideRadius + 0.0078 * bend.thickness) * bend.angleDegrees;

/**
 * The factor k of DIN 6935, twice the fraction of the thickness at which the neutral fibre lies: 0.65 + 0.5 lg(r / s),
 * 1 above r / s = 5. From memory: it serves to talk with a workshop that uses the standard, not to prove anything.
 */
export function dinFactor({ insideRadiusMm, thicknessMm }: MetalBend): number {
  const ratio = insideRadiusMm / thicknessMm;
  return ratio > 5 ? 1 : 0.65 + 0.5 * Math.log10(ratio);
}

/**
 * The compensation v of DIN 6935, mm, negative: flat = sum of the outside lengths + v. Up to a right angle the outside
 * lengths run to the tangent at the outer radius, 2 (r + s) off; for open bends to the mould line. Opening angles over
 * 165° count as flat. From memory, as `dinFactor`.
 */
export function dinCompensationMm(bend: MetalBend): number {
  const { insideRadiusMm: r, thicknessMm: s, angleRad } = bend;
  if (angleRad < OPEN_ENOUGH_RAD) return 0;
  const arcMm = (r + (dinFactor(bend) * s) / 2) * angleRad;
  const isOpen = angleRad < Math.PI / 2;
  return arcMm - 2 * (r + s) * (isOpen ? Math.tan(angleRad / 2) : 1);
}

/** A bend of less than 15° has an opening angle over 165°. */
const OPEN_ENOUGH_RAD = (Math.PI / 180) * (15 - 1e-9);
