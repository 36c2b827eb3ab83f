import { formatAngle } from "../foundation/index.ts";
import { wordBevel } from "../joints/index.ts";
import type { Part, PartEdge } from "../patterns/index.ts";

/** The face that a bevel leaves longer, in one word: positive ones that which looks away from the reader. */
export function longerFace(bevelRad: number, kind: Part["kind"]): "air" | "upper" | "outboard" | "inboard" {
  if (kind === "fence") return bevelRad > 0 ? "outboard" : "inboard";
  return bevelRad > 0 ? "air" : "upper";
}

/** A bevel at one place: `7.0° air`, or nothing where it is square. */
export const bevelFigure = (bevelRad: number, kind: Part["kind"]): string =>
  isSquare(bevelRad) ? "" : `${formatAngle(Math.abs(bevelRad))} ${longerFace(bevelRad, kind)}`;

/** Under this an angle is printed as none, rad. */
const SQUARE_RAD = 0.05 * (Math.PI / 180);
const isSquare = (bevelRad: number): boolean => Math.abs(bevelRad) < SQUARE_RAD;

/**
 * The bevels along an edge in words, least to most: `square`, `7.0°, air face longer`, `0.4° to 0.9°, upper face
 * longer`, and where the longer face changes `9.5° upper face longer to 6.7° air face longer`.
 */
export function bevelRange(bevels: PartEdge["bevels"], kind: Part["kind"]): string {
  const values = bevels.map(({ bevelRad }) => bevelRad);
  const [least, most] = [Math.min(0, ...values), Math.max(0, ...values)];
  if (!isSquare(least) && !isSquare(most)) {
    const side = (bevelRad: number) =>
      `${formatAngle(Math.abs(bevelRad))} ${longerFace(bevelRad, kind)} face longer`;
    return `${side(least)} to ${side(most)}`;
  }
  const sizes = values.map(Math.abs);
  const sign = isSquare(least) ? 1 : -1;
  return wordBevel(
    sizes.length === 0 ? [0, 0] : [sign * Math.min(...sizes), sign * Math.max(...sizes)],
    kind,
  );
}
