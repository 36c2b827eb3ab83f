/** A bent sheet: its foam's modulus along the sheet, its thickness, and the radius of its middle. */
export interface BentFoam {
  readonly modulusMPa: number;
  readonly thicknessMm: number;
  readonly radiusMm: number;
}

/** The moment that holds a bend, in N mm for each mm of its width along the rulings: E t³ / (12 R) (beam theory). */
export const holdingMomentPerMm = ({ modulusMPa, thicknessMm, radiusMm }: BentFoam): number =>
  (modulusMPa * thicknessMm ** 3) / (12 * radiusMm);

/** The strain of the outermost fibre, t / (2 R). */
export const outerStrain = ({ thicknessMm, radiusMm }: Pick<BentFoam, "thicknessMm" | "radiusMm">): number =>
  thicknessMm / (2 * radiusMm);

/** What an end of the bent sheet is held down with on a lever, N: the moment over the width, divided by the lever. */
export const holdDownN = (momentPerMm: number, widthMm: number, leverMm: number): number =>
  (momentPerMm * widthMm) / leverMm;

/** Newtons on a kilogram. */
const GRAVITY = 9.80665;

/** How many bags, or screws, or straps carry a force; pins locate and carry nothing until a tested value is typed. */
export const countFor = (forceN: number, eachN: number): number =>
  forceN <= 0 ? 0 : eachN > 0 ? Math.ceil(forceN / eachN - 1e-9) : Number.POSITIVE_INFINITY;

/** What a sandbag of a mass presses with, N. */
export const weightN = (massKg: number): number => massKg * GRAVITY;

/** What a washer presses with before it crushes the foam under it, N, its hole of a quarter of its width left out. */
export const washerN = (washerMm: number, crushMPa: number): number =>
  (Math.PI / 4) * washerMm * washerMm * (1 - 1 / 16) * crushMPa;
