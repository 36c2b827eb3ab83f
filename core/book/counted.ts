import { formatNumber } from "../foundation/index.ts";

/** A count with its noun, plural where it is not one: `1 part`, `3 strips`. */
export const counted = (count: number, noun: string): string =>
  `${formatNumber(count, 0)} ${noun}${count === 1 ? "" : "s"}`;
