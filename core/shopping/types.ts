import type { GlueStep } from "../glue-up/index.ts";
import type { PanelPlan } from "../panels/index.ts";
import type { FoldedPlate } from "../plates/index.ts";
import type { Project } from "../project/index.ts";
import type { LaidCloth, SkinPlan } from "../skins/index.ts";
import type { LaidGroup } from "../stock/index.ts";
import type { Totals } from "../totals/index.ts";

/** In what a thing is counted. */
export type Unit = "kg" | "m" | "pieces";

/** Something that the tray needs, and in which packs it is sold unless the builder says otherwise. */
export interface Need {
  /** Names it in the document: `resin epoxy-slow`, `gloves` … */
  readonly key: string;
  readonly name: string;
  readonly unit: Unit;
  readonly needed: number;
  readonly packOf: number;
  /** Where its price stands with the material itself. */
  readonly priceEach?: number | undefined;
}

/** A line of the shopping list. Amounts are in its unit, money in the currency of the document. */
export interface ShoppingLine {
  readonly key: string;
  readonly name: string;
  readonly unit: Unit;
  readonly needed: number;
  readonly have: number;
  readonly packOf: number;
  /** To be bought. */
  readonly packs: number;
  /** What remains of all when the tray is built. */
  readonly left: number;
  readonly priceEach?: number;
  readonly cost?: number;
}

export interface ShoppingList {
  readonly currency: string;
  readonly lines: readonly ShoppingLine[];
  /** Of all packs that have a price. */
  readonly cost: number;
  /** Lines with packs to buy that have none. */
  readonly unpricedKeys: readonly string[];
}

/** What a shopping list is made from. */
export interface Bench {
  readonly project: Project;
  readonly totals: Totals;
  readonly plates: readonly FoldedPlate[];
  readonly stock: readonly LaidGroup[];
  readonly glueUp: readonly GlueStep[];
  readonly skins: SkinPlan;
  readonly panels: PanelPlan;
  readonly cloth: readonly LaidCloth[];
}
