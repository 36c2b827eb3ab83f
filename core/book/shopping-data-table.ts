import { roundTo } from "../foundation/index.ts";
import type { DataTable } from "./data-table.ts";
import type { Design } from "./design.ts";
import type { PaperWork } from "./paper-work.ts";
import { shoppingOf } from "./shopping-of.ts";

/** The shopping list as a table; amounts in the unit of their line, money in the currency of the document. */
export function shoppingTable(design: Design, work: PaperWork): DataTable {
  const { lines, currency } = shoppingOf(design, work);
  return {
    name: "shopping",
    header: [
      "line",
      "name",
      "unit",
      "needed",
      "in store",
      "in a pack",
      "packs",
      "left",
      "price",
      "cost",
      "currency",
    ],
    rows: lines.map(({ key, name, unit, needed, have, packOf, packs, left, priceEach, cost }) => [
      key,
      name,
      unit,
      ...[needed, have, packOf].map((amount) => roundTo(amount, 3)),
      packs,
      roundTo(left, 3),
      priceEach ?? "",
      cost === undefined ? "" : roundTo(cost, 2),
      currency,
    ]),
  };
}
