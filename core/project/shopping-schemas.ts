import * as v from "valibot";
import { Name, Typed } from "./typed-fields.ts";

/** What a builder knows of something to be bought: how much is there already, in which packs it is sold, what one costs. */
export const BoughtSchema = v.strictObject({
  /** The line of the shopping list: `resin epoxy-slow`, `gloves` … */
  key: Name,
  have: v.optional(Typed),
  packOf: v.optional(Typed),
  priceEach: v.optional(Typed),
});
