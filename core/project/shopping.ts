import type { Problem } from "../foundation/index.ts";
import { isWithin, RANGES, type Range } from "./limits.ts";
import type { Project } from "./schema.ts";

/** What is typed of one line of the shopping list; what is absent is at its default. */
export type Bought = NonNullable<Project["shopping"]>[number];

const FIELDS = {
  have: ["In store", RANGES.inStore],
  packOf: ["In a pack", RANGES.packOf],
  priceEach: ["Price", RANGES.price],
} as const satisfies Record<Exclude<keyof Bought, "key">, readonly [string, Range]>;

/** What is typed of the shopping list; a figure out of its range is left at its default, with a problem. */
export function soundShopping(typed: readonly Bought[], problems: Problem[]): Bought[] {
  const isSound = (entry: Bought, key: keyof typeof FIELDS): boolean => {
    const [field, range] = FIELDS[key];
    const value = entry[key];
    if (value === undefined || isWithin(value, range)) return true;
    problems.push({ kind: "number-out-of-range", ...whereIs(entry.key), field, value, ...range });
    return false;
  };
  return typed.map((entry) => {
    const { key, have, packOf, priceEach } = entry;
    return {
      key,
      ...(isSound(entry, "have") && have !== undefined && { have }),
      ...(isSound(entry, "packOf") && packOf !== undefined && { packOf }),
      ...(isSound(entry, "priceEach") && priceEach !== undefined && { priceEach }),
    };
  });
}

const whereIs = (key: string) => ({ place: { setting: `shopping.${key}` }, name: `shopping list, ${key}` });
