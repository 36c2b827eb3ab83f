import { formatMass, formatNumber, THIN_SPACE } from "../foundation/index.ts";
import type { Unit } from "./types.ts";

/** An amount in words: `1.20 kg`, `17.9 m`, `34`. */
export function amountWords(amount: number, unit: Unit): string {
  if (unit === "kg") return amount < 5e-5 ? `0${THIN_SPACE}g` : formatMass(amount);
  return unit === "m" ? `${formatNumber(amount, 1)}${THIN_SPACE}m` : formatNumber(amount, 0);
}

/** Money with its currency: `12.50 EUR`. */
export const moneyWords = (amount: number, currency: string): string =>
  `${formatNumber(amount, 2)} ${currency}`.trimEnd();
