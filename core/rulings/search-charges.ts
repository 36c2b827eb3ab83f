import { DEVELOPABLE_TWIST_RAD } from "./limits.ts";

/**
 * The pull toward even spacing, rad²: it decides where the sheet is flat, and a sheet that is twisted by less than some
 * 0.01° however it is paired keeps its rulings even; well under the 0.1° of a developable one.
 */
export const SPACING_PULL = 1e-7;

/** A small crease costs as much as twice its angle in twist along the whole sheet. */
export const CREASE_WEIGHT = 4;

/** The least crease that counts as one, rad; a grid's is its step, as it cannot place a ruling any better. */
export const LEAST_CREASE_RAD = DEVELOPABLE_TWIST_RAD;

/**
 * What a crease costs a search, rad²: it is a fault to be named, never a way to score no twist, so beyond the least crease
 * it grows with the sixth power until no twist is as dear.
 */
export function creaseCharge(angleRad: number, leastCreaseRad: number): number {
  const excess = (angleRad / leastCreaseRad) ** 2;
  return CREASE_WEIGHT * angleRad * angleRad * (1 + excess * excess);
}
