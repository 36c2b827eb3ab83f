/** A true minus sign, as screen and paper show it. */
export const MINUS = "\u2212";
/** The thin space between a number and its unit. */
export const THIN_SPACE = "\u2009";

/** A number with a fixed count of decimals and a true minus sign; a rounded zero carries no sign. */
export function formatNumber(value: number, decimals: number): string {
  const text = Math.abs(value).toFixed(decimals);
  const isZero = Number(text) === 0;
  return value < 0 && !isZero ? MINUS + text : text;
}

/** A length in mm with one decimal and no unit: `128.4`. */
export const formatMm = (lengthMm: number): string => formatNumber(lengthMm, 1);

/** An angle in degrees with one decimal and its sign: `7.0°`. */
export const formatAngle = (angleRad: number): string => `${formatNumber(toDegrees(angleRad), 1)}°`;

/** Under so many grams a tenth counts. */
const FEW_GRAMS = 10;

/** A mass: grams under one kilogram, with a decimal where they are few; else kilograms with two decimals. */
export function formatMass(massKg: number): string {
  if (massKg >= 1) return `${formatNumber(massKg, 2)}${THIN_SPACE}kg`;
  const grams = massKg * 1000;
  return `${formatNumber(grams, grams > 0 && grams < FEW_GRAMS ? 1 : 0)}${THIN_SPACE}g`;
}

export const toDegrees = (angleRad: number): number => (angleRad * 180) / Math.PI;
export const toRadians = (angleDeg: number): number => (angleDeg * Math.PI) / 180;

/** A number rounded for a file that people and programs read: at most `decimals` places, no noise digits. */
export function roundTo(value: number, decimals: number): number {
  const factor = 10 ** decimals;
  const rounded = Math.round(value * factor) / factor;
  return rounded === 0 ? 0 : rounded;
}
