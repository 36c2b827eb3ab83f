import type { Project } from "../project/index.ts";
import { clothNeeds, glueNeeds, resinNeeds, sheetNeeds } from "./material-needs.ts";
import type { Bench, Need, ShoppingLine, ShoppingList } from "./types.ts";
import { usedUp } from "./used-up.ts";

/** A pack is full when no more than this of it is missing: rounding, not need. */
const ROUNDING = 1e-9;

/**
 * Everything to be bought for a tray, in the packs that it is sold in, less what is there already: what remains, and what
 * it costs. What a builder typed of a line comes before the usual packs. Nothing is on the list that is not needed; `more`
 * are needs that only the caller knows, such as paper.
 */
export function shoppingList(bench: Bench, more: readonly Need[] = []): ShoppingList {
  const { project } = bench;
  const needs = [
    ...sheetNeeds(bench),
    ...glueNeeds(bench),
    ...clothNeeds(bench),
    ...resinNeeds(bench),
    ...usedUp(bench),
    ...more,
  ].filter(({ needed }) => needed > ROUNDING);
  const lines = needs.map((need) => lineOf(need, project));
  return {
    currency: project.laying.currency,
    lines,
    cost: lines.reduce((sum, { cost }) => sum + (cost ?? 0), 0),
    unpricedKeys: lines.flatMap(({ key, packs, cost }) => (packs > 0 && cost === undefined ? [key] : [])),
  };
}

function lineOf({ key, name, unit, needed, ...usual }: Need, { shopping = [] }: Project): ShoppingLine {
  const typed = shopping.find((entry) => entry.key === key);
  const packOf = typed?.packOf ?? usual.packOf;
  const have = typed?.have ?? 0;
  const priceEach = usual.priceEach ?? typed?.priceEach;
  const packs = Math.max(0, Math.ceil((needed - have) / packOf - ROUNDING));
  return {
    key,
    name,
    unit,
    needed,
    have,
    packOf,
    packs,
    left: have + packs * packOf - needed,
    ...(priceEach !== undefined && { priceEach, cost: packs * priceEach }),
  };
}
